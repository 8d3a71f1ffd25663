package mainsgap.desk.pictures;

import java.util.List;

/**
 * How well losses cover the cycle.
 *
 * @param count of the losses
 * @param emptyFromDegrees where the widest stretch without a loss starts: at a loss
 * @param emptyDegrees its width; 360 where there is one loss or none
 */
record AngleCoverage(int count, double emptyFromDegrees, double emptyDegrees) {
  private static final double TURN = 360;

  /** Of angles in degrees, which may come in any order and lie in any turn. */
  static AngleCoverage of(List<Double> angles) {
    List<Double> sorted =
        angles.stream().map(a -> a - TURN * Math.floor(a / TURN)).sorted().toList();
    if (sorted.isEmpty()) {
      return new AngleCoverage(0, 0, TURN);
    }
    double from = sorted.get(sorted.size() - 1);
    double widest = sorted.get(0) + TURN - from;
    for (int i = 1; i < sorted.size(); i++) {
      double width = sorted.get(i) - sorted.get(i - 1);
      if (width > widest) {
        widest = width;
        from = sorted.get(i - 1);
      }
    }
    return new AngleCoverage(sorted.size(), from, widest);
  }

  String words() {
    return switch (count) {
      case 0 -> "No loss yet.";
      case 1 -> "1 loss, at " + whole(emptyFromDegrees) + ".";
      default ->
          count
              + " losses, none between "
              + whole(emptyFromDegrees)
              + " and "
              + whole(emptyFromDegrees + emptyDegrees)
              + ".";
    };
  }

  /** What rounds to a full circle is 0. */
  static String whole(double degrees) {
    return Math.round(degrees) % 360 + "°";
  }
}

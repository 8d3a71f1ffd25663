package mainsgap.signal;

/** An extent that grows while values are looked at; NaN changes nothing. */
final class ExtentSoFar {
  private double lowestVolts = Double.POSITIVE_INFINITY;
  private double highestVolts = Double.NEGATIVE_INFINITY;

  void add(double lowest, double highest) {
    if (lowest < lowestVolts) {
      lowestVolts = lowest;
    }
    if (highest > highestVolts) {
      highestVolts = highest;
    }
  }

  VoltExtent extent() {
    return new VoltExtent(lowestVolts, highestVolts);
  }
}

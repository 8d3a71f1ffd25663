package mainsgap.transfer.edge;

/** Weighted sums of places, for their mean and their spread. Not thread-safe. */
public final class Moments {
  /** Explanations worse than the best by more than this (-2 ln p) carry no weight. */
  static final double NEGLIGIBLE = 40;

  /** Where places count from, so that no digits are lost far from 0. */
  private final double origin;

  private double weight;
  private double sum;
  private double squares;

  Moments(double origin) {
    this.origin = origin;
  }

  /**
   * Of the places 0, 1, 2 ... by how well each explains the samples.
   *
   * @param costs -2 ln p of each, up to a constant; at least one finite
   */
  public static Moments byCosts(double[] costs) {
    int best = 0;
    for (int place = 1; place < costs.length; place++) {
      best = costs[place] < costs[best] ? place : best;
    }
    Moments moments = new Moments(best);
    for (int place = 0; place < costs.length; place++) {
      double worse = costs[place] - costs[best];
      if (worse < NEGLIGIBLE) {
        moments.add(place, Math.exp(-worse / 2));
      }
    }
    return moments;
  }

  /** Adds a place. */
  void add(double place, double ofWeight) {
    double offset = place - origin;
    weight += ofWeight;
    sum += ofWeight * offset;
    squares += ofWeight * offset * offset;
  }

  double weight() {
    return weight;
  }

  /** Not a number where nothing was added. */
  public double mean() {
    return origin + sum / weight;
  }

  double squaresAboutMean() {
    return Math.max(0, squares - sum * sum / weight);
  }

  /** The standard deviation; not a number where nothing was added. */
  public double spread() {
    return Math.sqrt(squaresAboutMean() / weight);
  }
}

package mainsgap.transfer;

import java.util.Arrays;

/** How the amplitude of a supply comes up from 0 to 1, in the time s since its instant. */
enum Rise {
  /** {@code 1 - e^(-s/T)}. */
  EXPONENTIAL(EdgeShape.SOFT_START) {
    @Override
    double at(double since, double seconds) {
      return 1 - Math.exp(-since / seconds);
    }

    @Override
    double integral(double since, double seconds) {
      return since + seconds * Math.exp(-since / seconds) - seconds;
    }

    /** A block later e^(-s/T) is less by the same ratio. */
    @Override
    void fillRising(double[] risen, int from, double since, double block, double seconds) {
      double keep = Math.exp(-block / seconds);
      double left = seconds / block * (1 - keep) * Math.exp(-since / seconds);
      for (int k = from; k < risen.length; k++) {
        risen[k] = 1 - left;
        left *= keep;
      }
    }
  },

  /** {@code s/T} up to 1. */
  LINEAR(EdgeShape.RAMP) {
    @Override
    double at(double since, double seconds) {
      return Math.min(1, since / seconds);
    }

    @Override
    double integral(double since, double seconds) {
      return since < seconds ? since * since / (2 * seconds) : since - seconds / 2;
    }

    @Override
    void fillRising(double[] risen, int from, double since, double block, double seconds) {
      int k = from;
      double start = since;
      while (k < risen.length && start < seconds) {
        risen[k] = (integral(start + block, seconds) - integral(start, seconds)) / block;
        start += block;
        k++;
      }
      Arrays.fill(risen, k, risen.length, 1);
    }
  };

  private final EdgeShape shape;

  Rise(EdgeShape shape) {
    this.shape = shape;
  }

  EdgeShape shape() {
    return shape;
  }

  /** The share that has risen {@code since}, at least 0, seconds after the instant. */
  abstract double at(double since, double seconds);

  /** The integral of that share from the instant on. */
  abstract double integral(double since, double seconds);

  /**
   * Fills in the mean share of each block from {@code from} on.
   *
   * @param since the end of block {@code from}, in seconds since the instant; the instant lies in
   *     it or before it
   */
  void fill(double[] risen, int from, double since, double block, double seconds) {
    if (from >= risen.length) {
      return;
    }
    double first = integral(Math.max(0, since), seconds);
    double earlier = integral(Math.max(0, since - block), seconds);
    risen[from] = (first - earlier) / block;
    fillRising(risen, from + 1, Math.max(0, since), block, seconds);
  }

  /** The same for blocks that begin after the instant, the first one {@code since} after it. */
  abstract void fillRising(double[] risen, int from, double since, double block, double seconds);
}

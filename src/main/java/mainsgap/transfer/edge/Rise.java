package mainsgap.transfer.edge;

/** How the amplitude of a supply comes up from 0 to 1, in the time s since its instant. */
public enum Rise {
  /** {@code 1 - e^(-s/T)}. */
  EXPONENTIAL(EdgeShape.SOFT_START) {
    @Override
    public double at(double since, double seconds) {
      return 1 - Math.exp(-since / seconds);
    }

    @Override
    double integral(double since, double seconds) {
      return since + seconds * Math.exp(-since / seconds) - seconds;
    }

    /** A block later e^(-s/T) is less by the same ratio. */
    @Override
    int fillRising(double[] risen, int from, double since, double block, double seconds) {
      double keep = Math.exp(-block / seconds);
      double left = seconds / block * (1 - keep) * Math.exp(-since / seconds);
      int k = from;
      while (k < risen.length && left > NOTHING_LEFT) {
        risen[k] = 1 - left;
        left *= keep;
        k++;
      }
      return k;
    }
  },

  /** {@code s/T} up to 1. */
  LINEAR(EdgeShape.RAMP) {
    @Override
    public double at(double since, double seconds) {
      return Math.min(1, since / seconds);
    }

    @Override
    double integral(double since, double seconds) {
      return since < seconds ? since * since / (2 * seconds) : since - seconds / 2;
    }

    @Override
    int fillRising(double[] risen, int from, double since, double block, double seconds) {
      double whole = Math.max(0, Math.floor((seconds - since) / block));
      int wholeTo = (int) Math.min(risen.length, from + whole);
      for (int k = from; k < wholeTo; k++) {
        risen[k] = (since + (k - from + 0.5) * block) / seconds;
      }
      if (wholeTo == risen.length) {
        return wholeTo;
      }
      double start = since + (wholeTo - from) * block;
      risen[wholeTo] = (integral(start + block, seconds) - integral(start, seconds)) / block;
      return wholeTo + 1;
    }
  };

  /** Beside 1, less than this is lost to rounding. */
  private static final double NOTHING_LEFT = 1e-17;

  private final EdgeShape shape;

  Rise(EdgeShape shape) {
    this.shape = shape;
  }

  public EdgeShape shape() {
    return shape;
  }

  /** The share that has risen {@code since}, at least 0, seconds after the instant. */
  public abstract double at(double since, double seconds);

  /** The integral of that share from the instant on. */
  abstract double integral(double since, double seconds);

  /**
   * Fills in the mean share of each block from {@code from} on.
   *
   * @param since the end of block {@code from}, in seconds since the instant; the instant lies in
   *     it or before it
   * @return the block from which on the share is 1; what is filled in ends there
   */
  public int fill(double[] risen, int from, double since, double block, double seconds) {
    if (from >= risen.length) {
      return from;
    }
    double first = integral(Math.max(0, since), seconds);
    double earlier = integral(Math.max(0, since - block), seconds);
    risen[from] = (first - earlier) / block;
    return fillRising(risen, from + 1, Math.max(0, since), block, seconds);
  }

  /** The same for blocks that begin after the instant, the first one {@code since} after it. */
  abstract int fillRising(double[] risen, int from, double since, double block, double seconds);
}

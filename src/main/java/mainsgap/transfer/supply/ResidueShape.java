package mainsgap.transfer.supply;

/**
 * The form of a residue, whose amplitudes are linear unknowns. A frequency of 0 makes it a level;
 * {@link #HELD} holds it, with hum or without.
 *
 * @param decay its time in seconds
 * @param hertz its frequency
 */
record ResidueShape(double decay, double hertz) {
  static final double HELD = Double.POSITIVE_INFINITY;

  /** A motor runs down, a sag does not. */
  static final double LONGEST_DECAY_SECONDS = 0.12;

  /**
   * A residue starts from what the supply was, so it is no larger than this and, where it swings,
   * no smaller.
   */
  private static final double LARGEST_SHARE_OF_PEAK = 1.3;

  private static final double SMALLEST_SWING_SHARE_OF_PEAK = 0.25;

  /** An open load picks up a few per cent. */
  private static final double LARGEST_HUM_SHARE_OF_PEAK = 0.06;

  /** A capacitor across an open switch lets through more, up to what would feed the load. */
  private static final double LARGEST_COUPLED_SHARE_OF_PEAK = 0.4;

  /** Over less than this it is no other than a supply that crosses zero. */
  private static final double COUPLED_CYCLES = 0.5;

  boolean isHum() {
    return decay == HELD && hertz > 0;
  }

  boolean isDecay() {
    return decay != HELD && hertz == 0;
  }

  /** The linear unknowns. */
  int columns() {
    return isHum() ? 3 : decay == HELD ? 1 : 2;
  }

  /** All unknowns. */
  int parameters() {
    return decay == HELD ? columns() : hertz == 0 ? 3 : 4;
  }

  /** What each linear unknown adds at a time. */
  void fill(double[] row, double t) {
    if (isHum()) {
      double angle = 2 * Math.PI * hertz * t;
      row[0] = 1;
      row[1] = Math.cos(angle);
      row[2] = Math.sin(angle);
    } else if (hertz > 0) {
      double envelope = Math.exp(-t / decay);
      double angle = 2 * Math.PI * hertz * t;
      row[0] = envelope * Math.cos(angle);
      row[1] = envelope * Math.sin(angle);
    } else {
      row[0] = 1;
      if (row.length > 1) {
        row[1] = Math.exp(-t / decay);
      }
    }
  }

  /**
   * Whether amplitudes are possible ones.
   *
   * @param peak of the nominal supply, in volts
   * @param spanSeconds the stretch that they were fitted to
   */
  boolean isPlausible(double[] x, double peak, double spanSeconds) {
    if (isHum()) {
      double hum = Math.hypot(x[1], x[2]);
      boolean isCoupled =
          spanSeconds * hertz >= COUPLED_CYCLES
              && hum < LARGEST_COUPLED_SHARE_OF_PEAK * peak
              && Math.abs(x[0]) < LARGEST_HUM_SHARE_OF_PEAK * peak;
      return isCoupled || hum < LARGEST_HUM_SHARE_OF_PEAK * peak;
    }
    if (hertz > 0) {
      if (decay > LONGEST_DECAY_SECONDS) {
        return false;
      }
      double swing = Math.hypot(x[0], x[1]);
      return swing < LARGEST_SHARE_OF_PEAK * peak && swing > SMALLEST_SWING_SHARE_OF_PEAK * peak;
    }
    return decay == HELD || Math.abs(x[1]) < LARGEST_SHARE_OF_PEAK * peak;
  }
}

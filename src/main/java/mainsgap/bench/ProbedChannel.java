package mainsgap.bench;

import mainsgap.settings.SettingsTable;

/**
 * One channel of a rig, with what its probe is rated for.
 *
 * @param number the instrument's channel, from 1
 * @param probeFactor volts at the tip for each volt at the input
 * @param category for which the weakest part of the chain is rated (IEC 61010-2-030)
 * @param ratedVolts RMS to earth, for that category
 */
record ProbedChannel(int number, double probeFactor, Category category, double ratedVolts) {
  private static final int MOST_CHANNELS = 16;
  private static final double LARGEST_FACTOR = 10_000;
  private static final double LARGEST_RATING = 10_000;
  static final String[] KEYS = {"number", "probe-factor", "category", "rated-volts"};

  /** Measurement categories; what has none must not see mains. */
  enum Category {
    CAT_II("CAT II"),
    CAT_III("CAT III"),
    CAT_IV("CAT IV");

    private final String print;

    Category(String print) {
      this.print = print;
    }

    @Override
    public String toString() {
      return print;
    }
  }

  /** Reads a channel and refuses one that must not see {@code toEarthVolts}. */
  static ProbedChannel read(SettingsTable table, double toEarthVolts) {
    ProbedChannel channel =
        new ProbedChannel(
            table.whole("number", 1, MOST_CHANNELS),
            table.number("probe-factor", 1e-3, LARGEST_FACTOR),
            table.choice("category", Category.class),
            table.number("rated-volts", 1, LARGEST_RATING));
    if (toEarthVolts > channel.ratedVolts) {
      throw table.complaint(
          "rated-volts",
          "is "
              + Words.plain(channel.ratedVolts)
              + " V, below the "
              + Words.plain(toEarthVolts)
              + " V that the line has to earth: use a probe that is rated for it");
    }
    return channel;
  }

  String words(String role) {
    return role
        + ", probe factor "
        + Words.plain(probeFactor)
        + ", "
        + category
        + " "
        + Words.plain(ratedVolts)
        + " V";
  }
}

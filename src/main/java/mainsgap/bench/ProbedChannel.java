package mainsgap.bench;

import java.util.Optional;
import mainsgap.settings.SettingsTable;

/**
 * One channel of a rig, with what its probe is rated for.
 *
 * @param number the instrument's channel, from 1
 * @param probeFactor volts at the tip for each volt at the input
 * @param category for which the weakest part of the chain is rated (IEC 61010-2-030)
 * @param ratedVolts RMS to earth, for that category
 */
public record ProbedChannel(int number, double probeFactor, Category category, double ratedVolts) {
  /** The most channels that an instrument may have. */
  public static final int MOST_CHANNELS = 16;

  /** The least probe factor. */
  public static final double SMALLEST_FACTOR = 1e-3;

  /** The largest probe factor. */
  public static final double LARGEST_FACTOR = 10_000;

  /** The highest rating in volts RMS to earth. */
  public static final double LARGEST_RATING = 10_000;

  static final String[] KEYS = {"number", "probe-factor", "category", "rated-volts"};

  /** Measurement categories; what has none must not see mains. */
  public enum Category {
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

  /** Reads a channel. */
  static ProbedChannel read(SettingsTable table) {
    return new ProbedChannel(
        table.whole("number", 1, MOST_CHANNELS),
        table.number("probe-factor", SMALLEST_FACTOR, LARGEST_FACTOR),
        table.choice("category", Category.class),
        table.number("rated-volts", 1, LARGEST_RATING));
  }

  /** What is wrong where the line has {@code toEarthVolts}; goes on after 'the rating'. */
  public Optional<String> complaint(double toEarthVolts) {
    return toEarthVolts > ratedVolts
        ? Optional.of(
            "is "
                + Words.plain(ratedVolts)
                + " V, below the "
                + Words.plain(toEarthVolts)
                + " V that the line has to earth: use a probe that is rated for it")
        : Optional.empty();
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

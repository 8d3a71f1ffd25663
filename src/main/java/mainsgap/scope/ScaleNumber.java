package mainsgap.scope;

import java.util.Locale;

/** A number that says what samples mean; a profile writes it small, with hyphens. */
enum ScaleNumber {
  POINTS(false),
  INTERVAL_SECONDS(false),
  /** The time of the reference sample. */
  FIRST_SAMPLE_SECONDS(false),
  /** The sample, from 0, whose time is told. */
  REFERENCE_SAMPLE(false),
  BYTES_PER_CODE(false),
  VOLTS_PER_CODE(true),
  /** The code that stands for the origin's volts. */
  REFERENCE_CODE(true),
  /** Codes that are added to the reference. */
  ORIGIN_CODES(true),
  ORIGIN_VOLTS(true);

  private final boolean vertical;

  ScaleNumber(boolean vertical) {
    this.vertical = vertical;
  }

  /** Whether it turns codes into volts. */
  boolean isVertical() {
    return vertical;
  }

  String spelt() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The number, if a record can have it.
   *
   * @throws ScopeException if not
   */
  double checked(double number) {
    boolean possible =
        switch (this) {
          case POINTS -> number >= 1 && number <= Integer.MAX_VALUE && number == Math.rint(number);
          case INTERVAL_SECONDS -> number > 0 && Double.isFinite(number);
          case VOLTS_PER_CODE -> number != 0 && Double.isFinite(number);
          default -> Double.isFinite(number);
        };
    if (!possible) {
      throw new ScopeException(
          "the instrument gives "
              + number
              + " for '"
              + spelt()
              + "', with which no sample can be placed: check 'waveform.values' in its profile");
    }
    return number;
  }
}

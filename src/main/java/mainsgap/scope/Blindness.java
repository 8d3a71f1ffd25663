package mainsgap.scope;

/**
 * What a plan cannot see, in numbers.
 *
 * @param neverUnderSeconds no gap shorter than this trips it; 0 where none is too short
 * @param sureFromSeconds every gap from here on trips it; 0 where every gap does
 * @param missedAtRatedPart of the points on wave, for a gap of the declared time, 0 to 1
 * @param blindTimePart the part of the time in which nothing is watched, at the least, 0 to 1
 */
public record Blindness(
    double neverUnderSeconds,
    double sureFromSeconds,
    double missedAtRatedPart,
    double blindTimePart) {

  /** No gap is missed, and nothing of the time. */
  public static final Blindness NONE = new Blindness(0, 0, 0, 0);

  /** What {@code zone} cannot see where a gap of {@code ratedSeconds} is declared. */
  static Blindness of(BlindZone zone, double ratedSeconds) {
    return new Blindness(
        zone.neverUnderSeconds(), zone.sureFromSeconds(), zone.missedPart(ratedSeconds), 0);
  }

  /** Records that leave out {@code part} of the time at the least. */
  static Blindness ofTime(double part) {
    return new Blindness(0, 0, part, part);
  }

  /** In a few words, for the session. */
  public String words() {
    if (blindTimePart > 0) {
      return "at least " + Words.plain(100 * blindTimePart, 2) + " % of the time";
    }
    return isAny()
        ? "gaps under "
            + Words.of(neverUnderSeconds, "s")
            + ", and some up to "
            + Words.of(sureFromSeconds, "s")
        : "none";
  }

  /** Whether anything can be missed. */
  public boolean isAny() {
    return sureFromSeconds > 0 || blindTimePart > 0;
  }
}

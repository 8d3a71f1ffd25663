package mainsgap.transfer.tolerance;

import mainsgap.transfer.outcome.Wording;
import org.jspecify.annotations.Nullable;

/**
 * One step of a tolerance curve: up to a duration the voltage may fall, or rise, so far.
 *
 * @param upToMillis infinite for what may last
 * @param percent of nominal RMS
 * @param atHertz the nominal frequency for which it is meant; null for any
 * @param need whether it is part of the curve
 * @param evidence how well it is known here
 * @param source where it stands
 */
public record ToleranceLevel(
    double upToMillis,
    double percent,
    @Nullable Double atHertz,
    Need need,
    Evidence evidence,
    String source) {

  /** Whether a step is part of its curve. */
  public enum Need {
    /** Part of the curve. */
    REQUIRED,
    /** Told beside it. */
    RECOMMENDED
  }

  boolean isFor(double nominalHertz) {
    return atHertz == null || Math.round(nominalHertz) == Math.round(atHertz);
  }

  boolean covers(double millis) {
    return millis <= upToMillis;
  }

  /** The step in words, such as "0 % up to 20 ms". */
  String words() {
    return Wording.plain(percent)
        + " %"
        + (Double.isInfinite(upToMillis) ? " lasting" : " up to " + Wording.span(upToMillis));
  }
}

package mainsgap.report;

import java.util.Locale;
import java.util.Optional;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * How clean one return is: a word, and beside it the figures that it comes from; "-" where the
 * capture cannot tell one.
 *
 * @param word clean, disturbed or rough
 * @param overshoot above nominal peak
 * @param undershoot below nominal peak
 * @param phase the step of the phase
 * @param distortion of the settled supply
 * @param settles the time to within 10 %
 * @param residual the disturbance over the first cycle
 * @param reasons the figures that make it no clean one
 */
public record ReturnWords(
    String word,
    String overshoot,
    String undershoot,
    String phase,
    String distortion,
    String settles,
    String residual,
    String reasons) {
  private static final String NONE = "-";

  /**
   * The words for the return of {@code outcome}; empty where there was none, or it was not taken.
   */
  public static Optional<ReturnWords> of(Outcome outcome) {
    return outcome instanceof Measured measured && measured.cleanness() != null
        ? Optional.of(of(measured, measured.cleanness()))
        : Optional.empty();
  }

  private static ReturnWords of(Measured measured, Cleanness clean) {
    Cleanness.Distortion thd = clean.thdAfter();
    Double step = measured.supplies().phaseStepDegrees();
    return new ReturnWords(
        clean.word().name().toLowerCase(Locale.ROOT),
        (clean.clippedAfterReturn() ? ">= " : "") + percent(clean.peakOvershootPercent()),
        percent(clean.peakUndershootPercent()),
        step == null ? NONE : Readings.formed("%+.1f°", step),
        thd == null ? NONE : percent(thd.percent()),
        clean.settlingMillis() == null
            ? NONE
            : String.format(Locale.ROOT, "%.2f ms", clean.settlingMillis()),
        percent(clean.residual().oneCyclePercent()),
        clean.reasons().isEmpty() ? NONE : String.join(", ", clean.reasons()));
  }

  private static String percent(@Nullable Double value) {
    return value == null ? NONE : Readings.formed("%.1f %%", value);
  }
}

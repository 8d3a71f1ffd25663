package mainsgap.report;

import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;

/**
 * The figures of one outcome as words for a person, rounded by their uncertainty; "-" where there
 * is none.
 *
 * @param transfer the transfer time, or what stands in its place
 * @param uncertainty with its sign
 * @param dead the dead time
 * @param angle the point on wave of the loss
 */
public record OutcomeWords(String transfer, String uncertainty, String dead, String angle) {
  private static final String NONE = "-";

  /** The words for {@code outcome}. */
  public static OutcomeWords of(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> ofMeasured((Measured) outcome);
      case NO_RETURN -> ofNoReturn((NoReturn) outcome);
      case NO_INTERRUPTION -> {
        NoInterruption none = (NoInterruption) outcome;
        yield new OutcomeWords(
            "no gap over " + Readings.millis(none.shortestVisibleMillis()),
            NONE,
            NONE,
            angle(none.pointOnWaveDegrees()));
      }
      case REFUSED -> new OutcomeWords("refused", NONE, NONE, NONE);
    };
  }

  /** The transfer time and its uncertainty as one phrase. */
  public String phrase() {
    return uncertainty.equals(NONE) ? transfer : transfer + " " + uncertainty;
  }

  private static OutcomeWords ofMeasured(Measured measured) {
    double uncertainty = measured.uncertaintyMillis();
    return new OutcomeWords(
        Readings.millis(measured.transferMillis(), uncertainty),
        Readings.uncertaintyMillis(uncertainty),
        dead(measured.deadMillis(), uncertainty),
        angle(measured.pointOnWaveDegrees()));
  }

  private static OutcomeWords ofNoReturn(NoReturn noReturn) {
    double uncertainty = noReturn.uncertaintyMillis();
    return new OutcomeWords(
        "no return in " + Readings.millis(noReturn.atLeastMillis(), uncertainty),
        Readings.uncertaintyMillis(uncertainty),
        dead(noReturn.deadMillis(), uncertainty),
        angle(noReturn.pointOnWaveDegrees()));
  }

  /** A sum of pieces under a level: no better than a hundredth of a millisecond is claimed. */
  private static String dead(double millis, double uncertaintyMillis) {
    return Readings.millis(millis, Math.max(uncertaintyMillis, 0.1));
  }

  /** Whole degrees; what rounds to a full circle is 0. */
  private static String angle(double degrees) {
    return Math.round(degrees) % 360 + "°";
  }
}

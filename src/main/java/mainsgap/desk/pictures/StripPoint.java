package mainsgap.desk.pictures;

import mainsgap.bench.TrialReport;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * A trial on the millisecond axis.
 *
 * @param number of the trial
 * @param mark how it stands
 * @param shape how it is drawn
 * @param millis its time, what the record shows at least where it had no return, 0 without
 *     interruption; null where it has none
 * @param uncertaintyMillis half-width of its interval; 0 where it has none
 * @param isAtLeast whether the time is longer still
 */
record StripPoint(
    int number,
    TrialMark mark,
    MarkShape shape,
    @Nullable Double millis,
    double uncertaintyMillis,
    boolean isAtLeast) {

  static StripPoint of(TrialReport trial) {
    Outcome outcome = trial.outcome();
    TrialMark mark = TrialMark.of(trial);
    MarkShape shape = MarkShape.of(trial);
    int number = trial.number();
    return switch (outcome.kind()) {
      case MEASURED -> {
        Measured measured = (Measured) outcome;
        yield new StripPoint(
            number,
            mark,
            shape,
            Math.max(0, measured.transferMillis()),
            finite(measured.uncertaintyMillis()),
            false);
      }
      case NO_RETURN -> {
        NoReturn none = (NoReturn) outcome;
        yield new StripPoint(
            number, mark, shape, none.atLeastMillis(), finite(none.uncertaintyMillis()), true);
      }
      case NO_INTERRUPTION -> new StripPoint(number, mark, shape, 0.0, 0, false);
      case REFUSED -> new StripPoint(number, mark, shape, null, 0, false);
    };
  }

  /** Where its whisker ends; 0 where it has no time. */
  double endMillis() {
    return millis == null ? 0 : millis + uncertaintyMillis;
  }

  private static double finite(double millis) {
    return Double.isFinite(millis) ? millis : 0;
  }
}

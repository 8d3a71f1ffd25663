package mainsgap.transfer.tolerance;

import java.util.Optional;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Wording;

/**
 * A deviation of the voltage as a tolerance curve sees it: how deep or high, and for how long.
 *
 * @param percent what is left, or what is reached, in per cent of nominal RMS
 * @param leastMillis the shortest duration that the measurement leaves possible, at least 0
 * @param mostMillis the longest; infinite where the end was not seen
 */
public record VoltageDeviation(double percent, double leastMillis, double mostMillis) {

  /** A voltage up to so much above nominal may stay for good, by the ITI curve. */
  private static final double STEADY_PERCENT = 10;

  /** Checks that the values are a level and a span. */
  public VoltageDeviation {
    if (!(percent >= 0 && leastMillis >= 0 && mostMillis >= leastMillis)
        || Double.isInfinite(percent)
        || Double.isInfinite(leastMillis)) {
      throw new IllegalArgumentException(
          "a deviation is a per cent from 0 up that lasts from 0 ms up, found "
              + percent
              + " % for "
              + leastMillis
              + " to "
              + mostMillis
              + " ms");
    }
  }

  /** A deviation of an exactly known duration. */
  public static VoltageDeviation of(double percent, double millis) {
    return new VoltageDeviation(percent, millis, millis);
  }

  /**
   * The gap of an outcome, taken as no voltage at all for the whole transfer time: what a residue
   * still feeds to the load is left out. Empty where nothing was measured, or no number.
   */
  public static Optional<VoltageDeviation> ofGap(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> {
        Measured measured = (Measured) outcome;
        yield span(
            measured.transferMillis() - measured.uncertaintyMillis(),
            measured.transferMillis() + measured.uncertaintyMillis());
      }
      case NO_RETURN -> {
        NoReturn noReturn = (NoReturn) outcome;
        yield span(
            noReturn.atLeastMillis() - noReturn.uncertaintyMillis(), Double.POSITIVE_INFINITY);
      }
      case NO_INTERRUPTION -> span(0, ((NoInterruption) outcome).shortestVisibleMillis());
      case REFUSED -> Optional.empty();
    };
  }

  /**
   * The swell behind a return: its highest peak, taken to last until the voltage is within 10 % of
   * the settled supply, which is on the safe side. Empty where the peak stays within 10 %, the
   * steady band of equipment, and where there was no return.
   */
  public static Optional<VoltageDeviation> ofSwell(Outcome outcome) {
    Cleanness clean = outcome instanceof Measured measured ? measured.cleanness() : null;
    if (clean == null || !(clean.peakOvershootPercent() > STEADY_PERCENT)) {
      return Optional.empty();
    }
    Double settling = clean.settlingMillis();
    return Optional.of(
        settling == null
            ? new VoltageDeviation(100 + clean.peakOvershootPercent(), 0, Double.POSITIVE_INFINITY)
            : of(100 + clean.peakOvershootPercent(), settling));
  }

  private static Optional<VoltageDeviation> span(double least, double most) {
    return Double.isFinite(least) && !Double.isNaN(most)
        ? Optional.of(new VoltageDeviation(0, Math.max(0, least), Math.max(0, most)))
        : Optional.empty();
  }

  /** The deviation in words, such as "0 % for 7.99 to 8.01 ms". */
  String words() {
    String level = Wording.plain(percent) + " % for ";
    if (Double.isInfinite(mostMillis)) {
      return level + "at least " + Wording.span(leastMillis);
    }
    String most = Wording.span(mostMillis);
    return Wording.span(leastMillis).equals(most)
        ? level + most
        : level + Wording.span(leastMillis) + " to " + most;
  }
}

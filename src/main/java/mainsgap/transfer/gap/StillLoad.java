package mainsgap.transfer.gap;

import java.util.List;
import java.util.Locale;
import mainsgap.signal.HarmonicModel;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import org.jspecify.annotations.Nullable;

/**
 * A load that lies still for longer than any supply rests is not fed: so much is sure, whatever the
 * models make of how it was lost. What they conclude is held against it.
 */
public final class StillLoad {
  /** A voltage within this of where it ends lies still. */
  private static final double STILL_SHARE_OF_PEAK = 0.15;

  /** No supply rests at zero for longer in each half cycle (own choice). */
  private static final double MOST_REST_CYCLES = 0.4;

  /** No supply comes back after so long at the end of a record. */
  private static final double FEWEST_CYCLES = 3;

  /** About a crossing a supply lies within that band for less than this before it is lost. */
  private static final double CROSSING_CYCLES = 0.1;

  private StillLoad() {}

  /**
   * What a record shows in which the load lies still up to the end: a gap at least that long; null
   * where it does not lie still there.
   *
   * @param start the supply before
   */
  public static @Nullable NoReturn upToTheEnd(Recording recording, HarmonicModel start) {
    int from = stillFrom(recording);
    if (recording.length() - from < FEWEST_CYCLES * recording.samplesPerCycle()) {
      return null;
    }
    double seconds = recording.time().secondsAt(from);
    double end = recording.time().secondsAt(recording.length() - 1);
    double doubt = CROSSING_CYCLES * recording.task().cycleSeconds() / Math.sqrt(3);
    UncertaintyBudget budget =
        new UncertaintyBudget(
            List.of(
                new UncertaintyBudget.Component(
                    "loss: where the load lies still", 1e3 * doubt, false)),
            2);
    return new NoReturn(
        recording.task().event(),
        seconds,
        seconds,
        1e3 * (end - seconds),
        budget.expandedMillis(),
        start.angleDegreesAt(seconds),
        new GapFigures(recording, seconds, end).deadMillis(),
        new Supplies(start.frequencyHertz(), null, null, null),
        false,
        budget);
  }

  /**
   * Refuses to tell of a record that nothing was interrupted where the load lies still in it.
   *
   * @throws CannotMeasureException where it does
   */
  public static void requireNone(Recording recording) {
    int width = Departure.averagingSamples(recording);
    double level = STILL_SHARE_OF_PEAK * recording.peakVolts();
    double most = MOST_REST_CYCLES * recording.samplesPerCycle();
    int since = 0;
    for (int i = 0; i + width <= recording.length(); i += width) {
      since = Math.abs(mean(recording, i, i + width)) < level ? since : i + width;
      if (i + width - since > most) {
        throw new CannotMeasureException(
            String.format(
                Locale.ROOT,
                "the load lies still from %.1f ms of the time axis on, though the supplies about it"
                    + " show no gap: look at the trace, and judge it there",
                1e3 * recording.time().secondsAt(since)));
      }
    }
  }

  private static int stillFrom(Recording recording) {
    int width = Departure.averagingSamples(recording);
    double level = STILL_SHARE_OF_PEAK * recording.peakVolts();
    double rest = mean(recording, Math.max(0, recording.length() - width), recording.length());
    int from = recording.length();
    while (from >= width && Math.abs(mean(recording, from - width, from) - rest) < level) {
      from -= width;
    }
    return from;
  }

  private static double mean(Recording recording, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += recording.volts()[i];
    }
    return sum / (to - from);
  }
}

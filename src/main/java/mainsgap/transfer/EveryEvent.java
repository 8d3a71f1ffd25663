package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CycleRms;
import mainsgap.signal.Event;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.jspecify.annotations.Nullable;

/**
 * Measures all events of one recording in their order: each in the part that follows the event
 * before. Pure: the capture is left unchanged.
 */
public final class EveryEvent {
  /** A record with more events is a series, not a recording. */
  private static final int MOST_EVENTS = 100;

  /** After a return the supply is given so many cycles to settle, before it is one to be lost. */
  private static final double SETTLING_CYCLES = 3;

  /** The part of an event ends so long before the next one. */
  private static final double APART_CYCLES = 1;

  /** The fewest cycles in which another event can be measured. */
  private static final double FEWEST_CYCLES = 4;

  /** Mains is present from this share of nominal RMS on. */
  private static final double PRESENT_SHARE_OF_NOMINAL = 0.5;

  private EveryEvent() {}

  /**
   * Measures each event. Which way mains went is read from the mains channel where there is one;
   * else the first event is that of the task, and losses and restorations take turns.
   *
   * @return at least one outcome; the last is refused only where nothing was measured before it, or
   *     where an event was seen that cannot be measured
   */
  public static List<Outcome> measure(Capture capture, MeasuringTask task) {
    return measure(capture, task, TransferMeasurement::measure);
  }

  /**
   * The same.
   *
   * @param measurement of one event; stands for {@link TransferMeasurement#measure}
   */
  public static List<Outcome> measure(
      Capture capture,
      MeasuringTask task,
      BiFunction<Capture, MeasuringTask, Outcome> measurement) {
    List<Found> found = new ArrayList<>();
    Event event = task.event();
    int from = 0;
    while (found.size() < MOST_EVENTS) {
      Capture part = capture.part(from, capture.time().length());
      Event seen = direction(part, task);
      MeasuringTask next =
          new MeasuringTask(
              seen == null ? event : seen, task.nominalVolts(), task.nominalFrequencyHertz());
      Outcome outcome = measurement.apply(part, next);
      boolean isNothing = outcome instanceof Refused refused && refused.isWithoutEvent();
      if (found.isEmpty() || !isNothing) {
        found.add(new Found(from, next, outcome));
      }
      Double ended = endSeconds(outcome);
      if (ended == null) {
        break;
      }
      double seconds = ended + SETTLING_CYCLES * task.cycleSeconds();
      from = (int) Math.ceil(capture.time().indexAt(seconds));
      if (capture.time().length() - from < FEWEST_CYCLES * samplesPerCycle(capture, task)) {
        break;
      }
      event = next.event() == Event.LOSS ? Event.RESTORATION : Event.LOSS;
    }
    List<Outcome> outcomes = new ArrayList<>();
    for (int k = 0; k < found.size(); k++) {
      Double nextSeconds = k + 1 < found.size() ? startSeconds(found.get(k + 1).outcome()) : null;
      outcomes.add(upTo(nextSeconds, found.get(k), capture, measurement));
    }
    return List.copyOf(outcomes);
  }

  /** An event in the part of the recording that begins at a sample. */
  private record Found(int from, MeasuringTask task, Outcome outcome) {}

  /** The events that follow are measured by themselves: none is a further interruption of it. */
  private static Outcome upTo(
      @Nullable Double nextSeconds,
      Found found,
      Capture capture,
      BiFunction<Capture, MeasuringTask, Outcome> measurement) {
    boolean counts =
        found.outcome() instanceof Measured measured && measured.furtherInterruptions().count() > 0;
    if (nextSeconds == null || !counts) {
      return found.outcome();
    }
    double end = nextSeconds - APART_CYCLES * found.task().cycleSeconds();
    int to = (int) Math.floor(capture.time().indexAt(end));
    Outcome alone = measurement.apply(capture.part(found.from(), to), found.task());
    return alone.kind() == Outcome.Kind.MEASURED ? alone : found.outcome();
  }

  private static @Nullable Double startSeconds(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> (Double) ((Measured) outcome).lossSeconds();
      case NO_RETURN -> (Double) ((NoReturn) outcome).lossSeconds();
      case NO_INTERRUPTION -> (Double) ((NoInterruption) outcome).eventSeconds();
      case REFUSED -> null;
    };
  }

  private static @Nullable Double endSeconds(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> (Double) ((Measured) outcome).returnSeconds();
      case NO_INTERRUPTION -> (Double) ((NoInterruption) outcome).eventSeconds();
      case NO_RETURN, REFUSED -> null;
    };
  }

  /** Mains at the start of the part tells what can happen to it; null where it is not watched. */
  private static @Nullable Event direction(Capture part, MeasuringTask task) {
    Waveform mains = part.waveform(ChannelRole.MAINS).orElse(null);
    if (mains == null) {
      return null;
    }
    int cycle = (int) Math.min(mains.length(), samplesPerCycle(part, task));
    double rms = CycleRms.of(mains.volts(0, cycle), 0, cycle);
    return rms > PRESENT_SHARE_OF_NOMINAL * task.nominalVolts() ? Event.LOSS : Event.RESTORATION;
  }

  private static double samplesPerCycle(Capture capture, MeasuringTask task) {
    return task.cycleSeconds() / capture.time().intervalSeconds();
  }
}

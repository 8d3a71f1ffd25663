package mainsgap.transfer.gap;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.signal.HarmonicModel;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import org.jspecify.annotations.Nullable;

/**
 * Where the load lies still at zero for longer than its supply rests, it is not fed: so much is
 * sure, whatever the models make of how it was lost. What they conclude is held against it.
 */
public final class StillLoad {
  /** A load that was let go lies within this of where it lay a moment ago, and of zero. */
  private static final double BAND_SHARE_OF_PEAK = 0.06;

  private static final double ZERO_SHARE_OF_PEAK = 0.08;

  /** The noise of a mean stays within so many of its standard deviations. */
  private static final double NOISES = 6;

  /** Of many samples so many tell where the load lies. */
  private static final int SAMPLES_OF_A_MEAN = 16;

  /** A supply that crosses zero is within the band for less (own choice). */
  private static final double SHORTEST_CYCLES = 0.07;

  /** A supply that rests does so for no more than its first cycles show, and a little. */
  private static final double RESTS = 1.3;

  private static final int START_CYCLES = 2;

  /** No supply rests for longer in each half cycle (own choice). */
  private static final double MOST_REST_CYCLES = 0.45;

  /** What is still for so long at the end of the record has not come back. */
  private static final double END_CYCLES = 3;

  /** About a crossing a supply lies still for no longer before it is lost, or when it is back. */
  private static final double CROSSING_CYCLES = 0.06;

  private final Recording recording;
  private final HarmonicModel start;
  private final List<Stretch> stretches;

  /**
   * Samples in which the load lies still.
   *
   * @param from the first of them
   * @param to one after the last
   */
  public record Stretch(int from, int to) {
    public int length() {
      return to - from;
    }
  }

  /**
   * Of one record.
   *
   * @param start the supply before
   */
  public StillLoad(Recording recording, HarmonicModel start) {
    this.recording = recording;
    this.start = start;
    this.stretches = stretches();
  }

  /** What such a record shows up to its end: a gap at least so long; null where it does not. */
  public @Nullable NoReturn toTheEnd() {
    Stretch last = last();
    if (last == null) {
      return null;
    }
    double seconds = recording.time().secondsAt(last.from());
    double end = recording.time().secondsAt(recording.length() - 1);
    UncertaintyBudget budget =
        new UncertaintyBudget(
            List.of(
                new UncertaintyBudget.Component(
                    "loss: where the load lies still", doubtMillis() / Math.sqrt(3), false)),
            Math.sqrt(3));
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
   * Refuses to tell of the record that nothing was interrupted.
   *
   * @throws CannotMeasureException where the load lies still for longer than its supplies rest
   */
  public void requireNone() {
    double shortest = SHORTEST_CYCLES * recording.samplesPerCycle();
    for (Stretch stretch : beyondRests()) {
      if (stretch.length() <= shortest) {
        continue;
      }
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the load lies still for %.1f ms at %.1f ms of the time axis, though the supplies"
                  + " about it show no gap: look at the trace, and judge it there",
              1e3 * stretch.length() * recording.time().intervalSeconds(),
              1e3 * recording.time().secondsAt(stretch.from())));
    }
  }

  /** The stretches that are longer than its supplies rest; of these some may be crossings. */
  public List<Stretch> beyondRests() {
    int cycles = (int) (START_CYCLES * recording.samplesPerCycle());
    int rest =
        Math.max(longest(0, cycles), longest(recording.length() - cycles, recording.length()));
    return joined().stream()
        .filter(stretch -> stretch.from() >= cycles && stretch.length() > RESTS * rest)
        .toList();
  }

  /** Where the load comes to lie still at a level that it leaves by little, that is no end. */
  private List<Stretch> joined() {
    List<Stretch> joined = new ArrayList<>();
    for (Stretch stretch : stretches) {
      Stretch last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (last != null && last.to() == stretch.from()) {
        joined.set(joined.size() - 1, new Stretch(last.from(), stretch.to()));
      } else {
        joined.add(stretch);
      }
    }
    return joined;
  }

  /** A gap with the breaks behind its return that the models left out. */
  public Measured heldAgainst(Measured gap) {
    FurtherInterruptions further = gap.furtherInterruptions();
    int count = 0;
    double longest = 0;
    int from = (int) Math.ceil(recording.time().indexAt(gap.returnSeconds()));
    // each long enough by itself: a supply that comes up is no still load, however it is joined
    int since = from;
    int end = from;
    for (Stretch stretch : stretches) {
      int behind = stretch.to() - Math.max(from, stretch.from());
      if (behind > MOST_REST_CYCLES * recording.samplesPerCycle()) {
        boolean goesOn = count > 0 && stretch.from() == end;
        count += goesOn ? 0 : 1;
        since = goesOn ? since : Math.max(from, stretch.from());
        end = stretch.to();
        longest = Math.max(longest, end - since);
      }
    }
    double millis = 1e3 * longest * recording.time().intervalSeconds() + doubtMillis();
    Double told = further.longestMillis();
    boolean isTold = count <= further.count() && told != null && told > millis - 3 * doubtMillis();
    Stretch last = last();
    boolean isOpen = last != null && last.from() >= from;
    if (count == 0 || (isTold && further.isOpen() == isOpen)) {
      return gap;
    }
    return gap.with(
        new FurtherInterruptions(
            Math.max(count, further.count()),
            Math.max(millis, told == null ? 0 : told),
            Math.max(doubtMillis(), further.uncertaintyMillis()),
            isOpen || further.isOpen()));
  }

  /** What lies still at either end of a stretch, and may be fed or not. */
  private double doubtMillis() {
    return 1e3 * CROSSING_CYCLES * recording.task().cycleSeconds();
  }

  private @Nullable Stretch last() {
    Stretch last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
    int width = Departure.averagingSamples(recording);
    return last != null
            && last.to() > recording.length() - 2 * width
            && last.length() >= END_CYCLES * recording.samplesPerCycle()
        ? last
        : null;
  }

  /** The longest rest that lies wholly within samples. */
  private int longest(int from, int to) {
    return stretches.stream()
        .filter(stretch -> stretch.from() >= from && stretch.to() <= to)
        .mapToInt(Stretch::length)
        .max()
        .orElse(0);
  }

  private List<Stretch> stretches() {
    int width = Departure.averagingSamples(recording);
    int step = Math.max(1, width / SAMPLES_OF_A_MEAN);
    double noise = NOISES * start.noiseVolts() / Math.sqrt((double) width / step);
    double band = Math.max(BAND_SHARE_OF_PEAK * recording.peakVolts(), noise);
    double zero = Math.max(ZERO_SHARE_OF_PEAK * recording.peakVolts(), noise);
    double shortest = SHORTEST_CYCLES / 2 * recording.samplesPerCycle();
    List<Stretch> found = new ArrayList<>();
    int since = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i + width <= recording.length(); i += width) {
      double mean = mean(i, i + width, step);
      double newLow = Math.min(low, mean);
      double newHigh = Math.max(high, mean);
      boolean isStill = Math.abs(mean - start.offsetVolts()) < zero && newHigh - newLow < band;
      if (!isStill) {
        add(found, since, i, shortest);
        boolean begins = Math.abs(mean - start.offsetVolts()) < zero;
        since = begins ? i : i + width;
        newLow = begins ? mean : Double.POSITIVE_INFINITY;
        newHigh = begins ? mean : Double.NEGATIVE_INFINITY;
      }
      low = newLow;
      high = newHigh;
    }
    add(found, since, recording.length(), shortest);
    return found;
  }

  private static void add(List<Stretch> found, int from, int to, double shortest) {
    if (to - from >= shortest) {
      found.add(new Stretch(from, to));
    }
  }

  private double mean(int from, int to, int step) {
    double[] volts = recording.volts();
    double sum = 0;
    int count = 0;
    for (int i = from; i < to; i += step) {
      sum += volts[i];
      count++;
    }
    return sum / count;
  }
}

package mainsgap.transfer.supply;

import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import org.jspecify.annotations.Nullable;

/** Finds, after a departure, where a supply repeats itself again, and fits it. */
public final class SettledSupply {
  /** Below this share of nominal RMS nothing feeds the load. */
  private static final double LEAST_SHARE_OF_NOMINAL = 0.4;

  /** Cycles that must repeat one another. */
  private static final double CYCLES = 3;

  /**
   * A settled supply may still ring and ripple by this share of its peak; one with steep steps,
   * where nothing better is found, by more.
   */
  private static final double[] REPEATS_WITHIN_SHARES_OF_PEAK = {0.12, 0.3};

  private static final double STEP_CYCLES = 0.25;

  /** Enough that the harmonics of a square output don't pull its frequency. */
  private static final int SHAPE_ORDERS = 7;

  /** So many cycles are fitted, the first one after settling never among them. */
  private static final double FIT_CYCLES = 10;

  /** A supply that starts softly has risen within so many cycles, or is taken as it is. */
  private static final int RISING_CYCLES = 16;

  private static final double RISEN_WITHIN_SHARE = 0.01;

  /** Near a crossing a break begins so long before it is seen. */
  private static final double UNSEEN_CYCLES = 0.25;

  /** Nearer than this to the guess the fit finds the frequency by itself. */
  private static final double FAR_SHARE = 0.03;

  /** A single cycle that leaves more of its fit is not fed all along. */
  private static final double WHOLE_CYCLE_SHARE_OF_PEAK = 0.04;

  /** The fewest cycles that tell a frequency. */
  private static final double BRIEF_CYCLES = 1.6;

  /** A motor that runs on decays, and leaves more of a fit. */
  private static final double BRIEF_SHARE_OF_PEAK = 0.015;

  private static final double LOWEST_HERTZ = 40;
  private static final double HIGHEST_HERTZ = 70;

  private SettledSupply() {}

  /** The supply that feeds the load at the end of the event; null where none does. */
  public static @Nullable Supply after(Recording recording, int departure, double guessHertz) {
    for (double within : REPEATS_WITHIN_SHARES_OF_PEAK) {
      Supply settled = after(recording, departure, guessHertz, within);
      if (settled != null) {
        return settled;
      }
    }
    double perCycle = recording.time().sampleRateHertz() / guessHertz;
    Supply last = lastCycle(recording, departure, perCycle, guessHertz);
    return last == null ? brief(recording, departure, perCycle, guessHertz) : last;
  }

  /** A supply that feeds for less than three cycles, and is left before the record ends. */
  private static @Nullable Supply brief(
      Recording recording, int departure, double perCycle, double guessHertz) {
    int span = (int) Math.ceil(BRIEF_CYCLES * perCycle);
    int step = (int) Math.max(1, Math.round(STEP_CYCLES * perCycle));
    for (int from = departure + step; from + span <= recording.length(); from += step) {
      if (isFed(recording, from, from + span)) {
        Supply found = Supply.fit(recording, from, from + span, guessHertz);
        if (found.usualSpreadVolts() < BRIEF_SHARE_OF_PEAK * recording.peakVolts()) {
          return found;
        }
      }
    }
    return null;
  }

  private static @Nullable Supply after(
      Recording recording, int departure, double guessHertz, double within) {
    double perCycle = recording.time().sampleRateHertz() / guessHertz;
    int span = (int) Math.round(CYCLES * perCycle);
    int step = (int) Math.max(1, Math.round(STEP_CYCLES * perCycle));
    int end = recording.length();
    for (int start = departure; start + span <= end; start += step) {
      if (isFed(recording, start, start + span)) {
        double hertz = repeatedHertz(recording, start, start + span, guessHertz, within);
        if (hertz > 0) {
          return fit(recording, start, hertz, within);
        }
      }
    }
    return null;
  }

  private static boolean isFed(Recording recording, int from, int to) {
    int third = (to - from) / 3;
    double least = LEAST_SHARE_OF_NOMINAL * recording.task().nominalVolts();
    return alternatingRms(recording, from, from + third) > least
        && alternatingRms(recording, to - third, to) > least;
  }

  /** About the mean: a level that is held feeds nothing. */
  private static double alternatingRms(Recording recording, int from, int to) {
    double sum = 0;
    double squares = 0;
    for (int i = from; i < to; i++) {
      double volts = recording.volts()[i];
      sum += volts;
      squares += volts * volts;
    }
    double mean = sum / (to - from);
    return Math.sqrt(Math.max(0, squares / (to - from) - mean * mean));
  }

  /**
   * The frequency with which the cycles repeat; 0 where they don't. A supply far from the guess,
   * such as 60 Hz behind 50 Hz mains, is fitted from the frequency of its crossings.
   */
  private static double repeatedHertz(
      Recording recording, int from, int to, double guessHertz, double within) {
    double hertz = frequencyIn(recording, from, to, guessHertz);
    if (repeats(recording, from, to, hertz, within)) {
      return hertz;
    }
    double crossing = Crossings.hertz(recording, from, to);
    if (Math.abs(crossing - guessHertz) < FAR_SHARE * guessHertz
        || !(crossing >= LOWEST_HERTZ && crossing <= HIGHEST_HERTZ)) {
      return 0;
    }
    double other = frequencyIn(recording, from, to, crossing);
    return repeats(recording, from, to, other, within) ? other : 0;
  }

  private static double frequencyIn(Recording recording, int from, int to, double guessHertz) {
    HarmonicModel shape =
        HarmonicFit.fit(
            recording.volts(), recording.time(), from, to, guessHertz, SHAPE_ORDERS, true);
    return shape.frequencyHertz();
  }

  private static boolean repeats(
      Recording recording, int from, int to, double hertz, double within) {
    double period = recording.time().sampleRateHertz() / hertz;
    int searchFrom = from + (int) Math.ceil(period);
    double noise = 0.01 * recording.peakVolts();
    double threshold =
        Math.max(within * recording.peakVolts(), Departure.thresholdVolts(recording, noise));
    return Departure.find(recording, searchFrom, to, period, threshold) < 0;
  }

  private static Supply fit(Recording recording, int start, double hertz, double within) {
    int end = repeatedTo(recording, start, hertz, within);
    double better = end < recording.length() ? settledHertz(recording, start, hertz) : hertz;
    int betterEnd = better == hertz ? end : repeatedTo(recording, start, better, within);
    if (betterEnd > end) {
      return risenIn(recording, start, betterEnd, better);
    }
    return risenIn(recording, start, end, hertz);
  }

  private static Supply risenIn(Recording recording, int start, int end, double hertz) {
    double perCycle = recording.time().sampleRateHertz() / hertz;
    int from = risen(recording, start, end, perCycle);
    return Supply.fitFrom(
        recording, from, (int) Math.min(end, from + FIT_CYCLES * perCycle), hertz);
  }

  /** The sample from which on the cycles repeat no longer; the end of the record if they do. */
  private static int repeatedTo(Recording recording, int start, double hertz, double within) {
    double perCycle = recording.time().sampleRateHertz() / hertz;
    int broken =
        Departure.find(
            recording,
            start + (int) Math.ceil(perCycle),
            recording.length(),
            perCycle,
            2 * within * recording.peakVolts());
    return broken < 0 ? recording.length() : broken - (int) (UNSEEN_CYCLES * perCycle);
  }

  /**
   * From more cycles, and later ones: where the first cycles still settle, or few samples place a
   * step, the frequency of three cycles is not good enough for the steps of all the others.
   */
  private static double settledHertz(Recording recording, int start, double hertz) {
    double perCycle = recording.time().sampleRateHertz() / hertz;
    int from = (int) (start + perCycle);
    int to = (int) Math.min(recording.length(), from + FIT_CYCLES * perCycle);
    return to - from < CYCLES * perCycle ? hertz : frequencyIn(recording, from, to, hertz);
  }

  /**
   * The start of the first cycle, after the first one, from which the RMS of all further cycles
   * stays close to what it comes to; two cycles before {@code end} at the latest.
   */
  private static int risen(Recording recording, int start, int end, double perCycle) {
    int cycles = (int) Math.min(RISING_CYCLES, (end - start) / perCycle);
    int latest = Math.max(1, cycles - 2);
    double last = cycleRms(recording, start, perCycle, cycles - 1);
    int first = latest;
    while (first > 1
        && Math.abs(cycleRms(recording, start, perCycle, first - 1) - last)
            < RISEN_WITHIN_SHARE * last) {
      first--;
    }
    int from = (int) Math.round(start + first * perCycle);
    return (int) Math.max(start, Math.min(from, end - 2 * perCycle));
  }

  private static double cycleRms(Recording recording, int start, double perCycle, int cycle) {
    int from = (int) Math.round(start + cycle * perCycle);
    return recording.rmsVolts(
        from, Math.min(recording.length(), (int) Math.round(from + perCycle)));
  }

  /** A record that ends before three cycles have repeated may still end in a fed cycle. */
  private static @Nullable Supply lastCycle(
      Recording recording, int departure, double perCycle, double guessHertz) {
    int from = recording.length() - (int) Math.ceil(perCycle);
    double least = LEAST_SHARE_OF_NOMINAL * recording.task().nominalVolts();
    if (from <= departure || alternatingRms(recording, from, recording.length()) <= least) {
      return null;
    }
    Supply found = Supply.fit(recording, from, recording.length(), guessHertz);
    boolean isOneSupply =
        found.usualSpreadVolts() < WHOLE_CYCLE_SHARE_OF_PEAK * recording.peakVolts();
    return isOneSupply ? found : null;
  }
}

package mainsgap.transfer.supply;

import mainsgap.signal.FoldedModel;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.NotchedFit;
import mainsgap.signal.NotchedModel;
import mainsgap.signal.PeriodicModel;
import mainsgap.signal.TimeAxis;
import org.jspecify.annotations.Nullable;

/**
 * A supply fitted in part of a recording.
 *
 * @param model what it does at any time
 * @param harmonics its fundamental and harmonics
 * @param from the first sample of the fit
 * @param to one after the last sample of the fit
 */
public record Supply(PeriodicModel model, HarmonicModel harmonics, int from, int to) {
  /**
   * So many cycles tell a supply that moves, its frequency as well.
   *
   * @param spreads so many times less do they leave of their own fit than of that of all cycles
   */
  private record Near(double cycles, double spreads) {
    int samples(Recording recording, double hertz) {
      return (int) Math.ceil(cycles * recording.time().sampleRateHertz() / hertz);
    }
  }

  private static final Near NEAR_BEFORE = new Near(3, 1.25);
  private static final Near LAST_BEFORE = new Near(1.6, 1.5);
  private static final Near NEAR_AFTER = new Near(3, 1.05);

  /** A supply that leaves less than this of its fit does not move. */
  private static final double MOVES_SHARE_OF_PEAK = 0.002;

  /** The spread of few samples is not better known than so many of its standard deviations. */
  private static final double MOVES_DEVIATIONS = 6;

  /** An arc burns for up to half a cycle before a loss. */
  private static final double UNSEEN_CYCLES = 0.55;

  private static final double LEFT_SHARE_OF_PEAK = 0.05;

  private static final double MOVES_FROM_CORRELATION = 0.05;

  private static final double SAME_HEIGHT_SHARE = 0.004;

  /** Enough for the harmonics that mains and inverters carry in practice. */
  private static final int ORDERS = 15;

  /** Fewer cycles leave no frequency free beside the harmonics. */
  private static final double FREE_CYCLES = 1.5;

  /** So many orders a part of a cycle still tells apart. */
  private static final int SHORT_ORDERS = 5;

  /** Noise is not alike from sample to sample; what a missing shape leaves is. */
  private static final double FOLDED_FROM_CORRELATION = 0.5;

  /** A sample always tells something beside its neighbour. */
  private static final double MOST_CORRELATION = 0.95;

  /**
   * Deviations above this share of nominal peak mean that the supply is no sum of few harmonics: it
   * is then taken as its mean cycle.
   */
  private static final double FOLDED_FROM_SHARE_OF_PEAK = 0.02;

  /** The fold needs cycles to average over. */
  private static final double FOLDED_CYCLES = 3;

  private static final int FOLDED_SAMPLES_PER_BIN = 20;

  /** Fits samples {@code from} (inclusive) to {@code to} (exclusive). */
  public static Supply fit(Recording recording, int from, int to, double guessHertz) {
    double cycles = (to - from) * recording.time().intervalSeconds() * guessHertz;
    boolean isLong = cycles >= FREE_CYCLES;
    int orders = isLong ? ORDERS : SHORT_ORDERS;
    HarmonicModel harmonics =
        HarmonicFit.fit(recording.volts(), recording.time(), from, to, guessHertz, orders, isLong);
    NotchedModel notched =
        NotchedFit.fit(
            recording.volts(), recording.time(), from, to, harmonics, recording.codeVolts());
    if (notched != null) {
      return new Supply(notched, notched.harmonics(), from, to);
    }
    boolean shaped =
        harmonics.noiseVolts() > FOLDED_FROM_SHARE_OF_PEAK * recording.peakVolts()
            && harmonics.noiseCorrelation() > FOLDED_FROM_CORRELATION
            && cycles >= FOLDED_CYCLES;
    PeriodicModel model =
        shaped
            ? FoldedModel.fold(
                recording.volts(), recording.time(), from, to, harmonics, FOLDED_SAMPLES_PER_BIN)
            : harmonics;
    return new Supply(model, harmonics, from, to);
  }

  /**
   * Fits samples up to {@code to}, where the supply is looked at: over its last cycles alone where
   * all of them are not one supply there, as of one whose frequency moves or whose voltage stepped.
   * What comes just before {@code to} has no say in this: it may be the arc of a loss.
   *
   * @param left where it is left, soon after {@code to}: what goes on there is another supply
   */
  public static Supply fitUpTo(Recording recording, int from, int to, double guessHertz, int left) {
    Supply whole = fit(recording, from, to, guessHertz);
    Supply near = whole.nearest(recording, to, guessHertz, NEAR_BEFORE);
    if (near != null) {
      Supply last = near.nearest(recording, to, guessHertz, LAST_BEFORE);
      near = last == null ? near : last;
    }
    return near != null && near.isLeftAt(recording, left) ? near : whole;
  }

  /** The fit of the last cycles alone where all of this one are not one supply; null elsewhere. */
  private @Nullable Supply nearest(Recording recording, int to, double guessHertz, Near last) {
    int start = to - last.samples(recording, guessHertz);
    int seenTo = to - (int) (UNSEEN_CYCLES * recording.samplesPerCycle());
    if (start <= from || !mayMove(recording, start, seenTo)) {
      return null;
    }
    Supply found = fit(recording, start, to, guessHertz);
    Supply seen = fit(recording, from, seenTo, guessHertz);
    boolean moves =
        seen.isFarther(found, recording, start, seenTo, last)
            || seen.isFarther(
                fit(recording, start, seenTo, guessHertz), recording, start, seenTo, last);
    return moves ? found : null;
  }

  /**
   * The same from {@code from} on, of a supply whose frequency moves: one that still rises is taken
   * as it comes to be.
   */
  static Supply fitFrom(Recording recording, int from, int to, double guessHertz) {
    Supply whole = fit(recording, from, to, guessHertz);
    int end = from + NEAR_AFTER.samples(recording, guessHertz);
    if (end >= to || !whole.mayMove(recording, from, end)) {
      return whole;
    }
    Supply near = fit(recording, from, end, whole.harmonics.frequencyHertz());
    boolean moves = whole.isFarther(near, recording, from, end, NEAR_AFTER);
    return moves && !whole.isOtherHeight(near) ? near : whole;
  }

  /** Whether what its fit leaves is more than noise that knows nothing of its neighbours. */
  private boolean mayMove(Recording recording, int from, int to) {
    return harmonics.noiseCorrelation() > MOVES_FROM_CORRELATION
        && spreadIn(recording, from, to) > MOVES_SHARE_OF_PEAK * recording.peakVolts();
  }

  /** Whether another fit is closer to samples beyond doubt. */
  private boolean isFarther(Supply other, Recording recording, int from, int to, Near near) {
    double least = 1 + MOVES_DEVIATIONS / Math.sqrt(2.0 * (to - from));
    double spreads = Math.max(near.spreads(), least);
    return spreadIn(recording, from, to) > spreads * other.spreadIn(recording, from, to)
        && !other.hasSteps();
  }

  /** Whether within half a cycle some average is away from it. */
  private boolean isLeftAt(Recording recording, int sample) {
    int width = Departure.averagingSamples(recording);
    int end = sample + (int) (recording.samplesPerCycle() / 2);
    for (int i = sample; i + width <= Math.min(end, recording.length()); i += width) {
      double sum = 0;
      for (double deviation : deviationsIn(recording, i, i + width)) {
        sum += deviation;
      }
      if (Math.abs(sum / width) > LEFT_SHARE_OF_PEAK * recording.peakVolts()) {
        return true;
      }
    }
    return false;
  }

  private boolean isOtherHeight(Supply other) {
    double height = harmonics.amplitudeVolts();
    return Math.abs(other.harmonics.amplitudeVolts() - height) > SAME_HEIGHT_SHARE * height;
  }

  /** The root mean square of what samples have more. */
  public double spreadIn(Recording recording, int from, int to) {
    double squares = 0;
    for (double deviation : deviationsIn(recording, from, to)) {
      squares += deviation * deviation;
    }
    return Math.sqrt(squares / (to - from));
  }

  /** The standard deviation of samples about it, away from its own steps. */
  public double usualSpreadVolts() {
    return model.usualSpreadVolts();
  }

  /** Its voltages at samples {@code from} (inclusive) to {@code to} (exclusive), a new array. */
  public double[] voltsIn(TimeAxis time, int from, int to) {
    return model.voltsEvery(time.intervalSeconds(), time.secondsAt(from), Math.max(0, to - from));
  }

  /** What samples {@code from} (inclusive) to {@code to} (exclusive) have more, a new array. */
  public double[] deviationsIn(Recording recording, int from, int to) {
    double[] deviations = voltsIn(recording.time(), from, to);
    for (int k = 0; k < deviations.length; k++) {
      deviations[k] = recording.volts()[from + k] - deviations[k];
    }
    return deviations;
  }

  /** Whether its cycle has steps of its own, at which it moves from sample to sample. */
  public boolean hasSteps() {
    return model.hasSteps();
  }

  /** Whether it is vague at some angles, as its spread tells: at steps or notches. */
  public boolean isVagueInPlaces() {
    return model.isVagueInPlaces();
  }

  /** How much one sample's deviation tells beside its neighbour's. */
  public double informationShare() {
    double correlation = Math.max(0, Math.min(MOST_CORRELATION, harmonics.noiseCorrelation()));
    return (1 - correlation) / (1 + correlation);
  }
}

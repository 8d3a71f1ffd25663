package mainsgap.transfer;

import mainsgap.signal.FoldedModel;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.PeriodicModel;
import mainsgap.signal.TimeAxis;

/**
 * A supply fitted in part of a recording.
 *
 * @param model what it does at any time
 * @param harmonics its fundamental and harmonics
 * @param from the first sample of the fit
 * @param to one after the last sample of the fit
 */
record Supply(PeriodicModel model, HarmonicModel harmonics, int from, int to) {
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
  static Supply fit(Recording recording, int from, int to, double guessHertz) {
    double cycles = (to - from) * recording.time().intervalSeconds() * guessHertz;
    boolean isLong = cycles >= FREE_CYCLES;
    int orders = isLong ? ORDERS : SHORT_ORDERS;
    HarmonicModel harmonics =
        HarmonicFit.fit(recording.volts(), recording.time(), from, to, guessHertz, orders, isLong);
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

  /** The standard deviation of samples about it, away from its own steps. */
  double usualSpreadVolts() {
    return model instanceof FoldedModel folded ? folded.usualSpreadVolts() : harmonics.noiseVolts();
  }

  /** Its voltages at samples {@code from} (inclusive) to {@code to} (exclusive), a new array. */
  double[] voltsIn(TimeAxis time, int from, int to) {
    return model.voltsEvery(time.intervalSeconds(), time.secondsAt(from), Math.max(0, to - from));
  }

  /** What samples {@code from} (inclusive) to {@code to} (exclusive) have more, a new array. */
  double[] deviationsIn(Recording recording, int from, int to) {
    double[] deviations = voltsIn(recording.time(), from, to);
    for (int k = 0; k < deviations.length; k++) {
      deviations[k] = recording.volts()[from + k] - deviations[k];
    }
    return deviations;
  }

  /** Whether its cycle has steps of its own, at which it moves from sample to sample. */
  boolean hasSteps() {
    return model instanceof FoldedModel;
  }

  /** How much one sample's deviation tells beside its neighbour's. */
  double informationShare() {
    double correlation = Math.max(0, Math.min(MOST_CORRELATION, harmonics.noiseCorrelation()));
    return (1 - correlation) / (1 + correlation);
  }
}

package mainsgap.transfer.bank;

import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;

/**
 * What was measured in a capture beside its truth; the samples are let go.
 *
 * @param boundMicros of {@link LocationBound}; NaN where no transfer time is carried
 * @param levelErrorMicros of {@link LevelReading}; NaN where no transfer time is carried
 * @param dipErrorMicros of {@link DipReading}; NaN where no transfer time is carried
 */
record TriedCapture(
    long seed,
    Outcome outcome,
    Truth truth,
    double tookMillis,
    double boundMicros,
    double levelErrorMicros,
    double dipErrorMicros) {

  private static final double SAMPLES = 2;
  private static final double BOUNDS = 2;
  private static final double TIDY_NOISE_SHARE = 0.01;
  private static final double TIDY_SAMPLE_MICROS = 10;
  private static final double ROUNDING = 1 + 1e-9;

  static TriedCapture of(CaptureKind kind, long seed) {
    KnownCapture known = kind.capture(seed);
    long start = System.nanoTime();
    Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
    double tookMillis = (System.nanoTime() - start) / 1e6;
    Truth truth = known.truth();
    if (kind.carries() != Outcome.Kind.MEASURED) {
      return new TriedCapture(seed, outcome, truth, tookMillis, Double.NaN, Double.NaN, Double.NaN);
    }
    double level = LevelReading.millis(known.capture(), known.task());
    double dip = DipReading.of(known.capture(), known.task()).millis();
    return new TriedCapture(
        seed,
        outcome,
        truth,
        tookMillis,
        known.locationBound().getAsDouble() * 1e6,
        (level - truth.transferMillis()) * 1e3,
        (dip - truth.transferMillis()) * 1e3);
  }

  /** Measured minus true transfer time; where there is no return, that of the loss. */
  double errorMicros() {
    if (outcome instanceof Measured measured) {
      return (measured.transferMillis() - truth.transferMillis()) * 1e3;
    }
    return outcome instanceof NoReturn none
        ? (none.lossSeconds() - truth.lossSeconds()) * 1e6
        : Double.NaN;
  }

  double uncertaintyMicros() {
    if (outcome instanceof Measured measured) {
      return measured.uncertaintyMillis() * 1e3;
    }
    return outcome instanceof NoReturn none ? none.uncertaintyMillis() * 1e3 : Double.NaN;
  }

  boolean isCovered() {
    return Math.abs(errorMicros()) <= uncertaintyMicros();
  }

  /** Whether the error lies within two samples or twice the bound, whichever is more. */
  boolean isWithinBound() {
    return Math.abs(errorMicros())
        <= Math.max(SAMPLES * truth.sampleMicros(), BOUNDS * boundMicros);
  }

  /** Whether the error lies within {@code micros} or two samples. */
  boolean isWithin(double micros) {
    return Math.abs(errorMicros()) <= Math.max(micros, SAMPLES * truth.sampleMicros());
  }

  /** Noise up to 1 % of peak, at least 100 kS/s, and a return that shows. */
  boolean isTidy() {
    return !truth.returnsInRest()
        && truth.noiseShare() <= TIDY_NOISE_SHARE
        && truth.sampleMicros() <= TIDY_SAMPLE_MICROS * ROUNDING;
  }

  /** Whether as many breaks after the return were found as there are. */
  boolean hasRightBreaks() {
    return !(outcome instanceof Measured measured)
        || measured.furtherInterruptions().count() == truth.furtherInterruptions();
  }
}

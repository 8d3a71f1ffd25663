package mainsgap.signal;

import java.util.Arrays;
import java.util.BitSet;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.jspecify.annotations.Nullable;

/**
 * Fits a {@link NotchedModel}. What stands out of a {@link HarmonicFit} for moments, cycle after
 * cycle, gives way to the model, and the rest is fitted again: least squares with a hard rejection,
 * its scale the median of the absolute deviations. A fit that notches bend rings about them, so
 * that its own ringing stands out too; the notches stand out farthest, and the limit comes down
 * from there. For windows of some tens of cycles at most.
 */
public final class NotchedFit {
  /** More samples than this are thinned. */
  private static final int MOST_SAMPLES = 20_000;

  private static final int FEWEST_SAMPLES = 200;

  /**
   * Off a whole number: what lies next to an event is fitted over three by their guessed length.
   */
  private static final double FEWEST_CYCLES = 2.5;

  /** Noise that knows nothing of its neighbours has no notches. */
  private static final double LEAST_CORRELATION = 0.1;

  /** Of a normal distribution, in medians of its absolute deviations. */
  private static final double DEVIATION_MEDIANS = 1.4826;

  /** So many times what that median tells must the root mean square be. */
  private static final double LEAST_RATIO = 1.25;

  private static final int PASSES = 8;
  private static final double FIRST_SHARE_OF_FARTHEST = 0.5;
  private static final double SHARE_FROM_PASS_TO_PASS = 0.6;
  private static final double LAST_LIMIT_DEVIATIONS = 4;

  /** Of the samples; what takes more is a shape of its own. */
  private static final double MOST_SHARE = 0.05;

  private static final double LONGEST_CYCLES = 0.05;

  /** Notches come again: so many of the cycles have some. */
  private static final double LEAST_SHARE_OF_CYCLES = 0.5;

  private static final int SAMPLES_PER_BIN = 20;

  private final double[] volts;
  private final TimeAxis time;
  private final double samplesPerCycle;
  private final double leastDeviationVolts;

  private NotchedFit(double[] volts, TimeAxis time, double hertz, double leastDeviationVolts) {
    this.volts = volts;
    this.time = time;
    this.samplesPerCycle = time.sampleRateHertz() / hertz;
    this.leastDeviationVolts = leastDeviationVolts;
  }

  /**
   * Fits samples {@code from} (inclusive) to {@code to} (exclusive).
   *
   * @param volts the samples of {@code time}, left unchanged
   * @param bent the fit of the same samples, its frequency fitted too
   * @param codeVolts between neighbouring codes of the samples
   * @return null where nothing stands out of {@code bent} as notches do
   */
  public static @Nullable NotchedModel fit(
      double[] volts, TimeAxis time, int from, int to, HarmonicModel bent, double codeVolts) {
    double cycles = (to - from) * time.intervalSeconds() * bent.frequencyHertz();
    if (bent.noiseCorrelation() < LEAST_CORRELATION
        || to - from < FEWEST_SAMPLES
        || cycles < FEWEST_CYCLES) {
      return null;
    }
    int stride = (to - from + MOST_SAMPLES - 1) / MOST_SAMPLES;
    double[] taken = new double[(to - from) / stride];
    Arrays.setAll(taken, i -> volts[from + i * stride]);
    TimeAxis axis =
        new TimeAxis(
            time.secondsAt(from),
            stride * time.intervalSeconds(),
            taken.length,
            time.timeBasePpm());
    NotchedFit fit = new NotchedFit(taken, axis, bent.frequencyHertz(), codeVolts / 2);
    HarmonicModel unbent = fit.unbent(bent);
    if (unbent == null) {
      return null;
    }
    double[] deviations = fit.deviations(unbent);
    double limit = LAST_LIMIT_DEVIATIONS * fit.scale(deviations);
    Deviations left = Deviations.within(limit, volts, time, from, to, stride, unbent);
    FoldedModel beside =
        FoldedModel.fold(deviations, axis, 0, deviations.length, unbent, SAMPLES_PER_BIN);
    return new NotchedModel(unbent.withNoise(left), beside);
  }

  private @Nullable HarmonicModel unbent(HarmonicModel bent) {
    double[] deviations = deviations(bent);
    if (rootMeanSquare(deviations) < LEAST_RATIO * scale(deviations)) {
      return null;
    }
    HarmonicModel model = bent;
    double limit = FIRST_SHARE_OF_FARTHEST * usuallyFarthest(deviations);
    for (int pass = 0; pass < PASSES; pass++) {
      limit = Math.max(limit, LAST_LIMIT_DEVIATIONS * scale(deviations));
      if (!areNotches(deviations, limit)) {
        return null;
      }
      model = refit(model, deviations, limit);
      deviations = deviations(model);
      limit *= SHARE_FROM_PASS_TO_PASS;
    }
    return model;
  }

  private HarmonicModel refit(HarmonicModel model, double[] deviations, double limit) {
    double[] filled = volts.clone();
    for (int i = 0; i < filled.length; i++) {
      filled[i] -= Math.abs(deviations[i]) > limit ? deviations[i] : 0;
    }
    return HarmonicFit.fit(
        filled, time, 0, filled.length, model.frequencyHertz(), model.orders(), true);
  }

  /** Whether what stands out is little, short each time and there in cycle after cycle. */
  private boolean areNotches(double[] deviations, double limit) {
    int standing = 0;
    int run = 0;
    int longest = 0;
    BitSet cyclesWithSome = new BitSet();
    for (int i = 0; i < deviations.length; i++) {
      if (Math.abs(deviations[i]) <= limit) {
        run = 0;
        continue;
      }
      standing++;
      run++;
      longest = Math.max(longest, run);
      cyclesWithSome.set((int) (i / samplesPerCycle));
    }
    double cycles = deviations.length / samplesPerCycle;
    return standing <= MOST_SHARE * deviations.length
        && longest <= Math.max(1, LONGEST_CYCLES * samplesPerCycle)
        && cyclesWithSome.cardinality() >= LEAST_SHARE_OF_CYCLES * cycles;
  }

  private double[] deviations(HarmonicModel model) {
    double[] deviations = model.voltsEvery(time.intervalSeconds(), time.secondsAt(0), volts.length);
    Arrays.setAll(deviations, i -> volts[i] - deviations[i]);
    return deviations;
  }

  /** The standard deviation that most of them show. */
  private double scale(double[] deviations) {
    double[] sizes = Arrays.stream(deviations).map(Math::abs).toArray();
    return Math.max(leastDeviationVolts, DEVIATION_MEDIANS * new Median().evaluate(sizes));
  }

  /**
   * The farthest of a cycle, as half of the cycles have it: not that of a spike that comes once.
   */
  private double usuallyFarthest(double[] deviations) {
    double[] farthest = new double[(int) Math.ceil(deviations.length / samplesPerCycle)];
    for (int i = 0; i < deviations.length; i++) {
      int cycle = (int) (i / samplesPerCycle);
      farthest[cycle] = Math.max(farthest[cycle], Math.abs(deviations[i]));
    }
    return new Median().evaluate(farthest);
  }

  private static double rootMeanSquare(double[] deviations) {
    return Math.sqrt(Arrays.stream(deviations).map(d -> d * d).average().orElse(0));
  }
}

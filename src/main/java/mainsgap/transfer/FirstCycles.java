package mainsgap.transfer;

import java.util.Locale;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.supply.Crossings;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SampleNoise;

/** The first cycles of an output: whether they are a supply of the task's nominal values. */
final class FirstCycles {
  /** Fewer samples a cycle can't place an instant to a useful part of a millisecond. */
  private static final double FEWEST_SAMPLES_PER_CYCLE = 40;

  private static final double FEWEST_CYCLES_BEFORE = 2;

  /** No supply, and no surge on it, reaches so many nominal peaks. */
  private static final double MOST_PEAKS = 100;

  /** What is left of two cycles by more than this is a shape of their own. */
  private static final double SHAPED_SHARE_OF_PEAK = 0.05;

  /** Its frequency is that of its crossings: few harmonics of a square output pull it. */
  private static final int SHAPE_ORDERS = 7;

  /** A frequency that no fit came to is counted over so many cycles. */
  private static final double COUNTED_CYCLES = 3;

  private static final double AMPLITUDE_TOLERANCE = 0.2;
  private static final double FREQUENCY_TOLERANCE = 0.05;

  private FirstCycles() {}

  /**
   * The harmonics of the first two cycles.
   *
   * @throws CannotMeasureException where the recording is none of such a supply, or too coarse
   */
  static HarmonicModel of(Recording output) {
    checkVoltages(output);
    checkSampling(output);
    int to = SampleNoise.inTwoCycles(output);
    checkNominalVolts(output, output.rmsVolts(0, to));
    double nominal = output.task().nominalFrequencyHertz();
    HarmonicModel start = HarmonicFit.fit(output.volts(), output.time(), 0, to, nominal, 1, true);
    double counted = Crossings.hertz(output, 0, to);
    boolean isShaped = start.noiseVolts() > SHAPED_SHARE_OF_PEAK * output.peakVolts();
    if (isShaped && Math.abs(counted - nominal) <= FREQUENCY_TOLERANCE * nominal) {
      return HarmonicFit.fit(output.volts(), output.time(), 0, to, counted, SHAPE_ORDERS, false);
    }
    checkNominalHertz(output, start.frequencyHertz());
    return start;
  }

  /**
   * The standard deviation of one sample's noise: what harmonics leave of the first two cycles.
   *
   * @param start what {@link #of} gave for them
   */
  static double noiseVolts(Recording output, HarmonicModel start) {
    double shaped = SampleNoise.volts(output, 0, start.frequencyHertz());
    return Math.min(start.noiseVolts(), shaped);
  }

  private static void checkVoltages(Recording output) {
    double largest = MOST_PEAKS * output.peakVolts();
    for (int i = 0; i < output.length(); i++) {
      double volts = output.volts()[i];
      if (!(Math.abs(volts) <= largest)) {
        throw new CannotMeasureException(
            String.format(
                Locale.ROOT,
                "the output is at %g V at %.3f ms of the time axis, nominal peak %.0f V: is the probe"
                    + " factor right, and is this a recording of mains?",
                volts,
                1e3 * output.time().secondsAt(i),
                output.peakVolts()));
      }
    }
  }

  private static void checkSampling(Recording output) {
    double perCycle = output.samplesPerCycle();
    if (perCycle < FEWEST_SAMPLES_PER_CYCLE) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "too coarse: %.0f samples a cycle, at least %.0f are needed: sample faster than"
                  + " %.1f kS/s",
              perCycle,
              FEWEST_SAMPLES_PER_CYCLE,
              FEWEST_SAMPLES_PER_CYCLE * output.task().nominalFrequencyHertz() / 1000));
    }
    double cycles = output.length() / perCycle;
    if (cycles < FEWEST_CYCLES_BEFORE + 0.5) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the record holds %.1f cycles, at least %.1f are needed: record longer",
              cycles,
              FEWEST_CYCLES_BEFORE + 0.5));
    }
  }

  private static void checkNominalVolts(Recording output, double rmsVolts) {
    double nominal = output.task().nominalVolts();
    if (Math.abs(rmsVolts - nominal) > AMPLITUDE_TOLERANCE * nominal) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the supply before is %.4g V RMS, nominal %.4g V ± %.0f %%: are the nominal voltage"
                  + " and the probe factor right?",
              rmsVolts,
              nominal,
              100 * AMPLITUDE_TOLERANCE));
    }
  }

  private static void checkNominalHertz(Recording output, double hertz) {
    double nominalHertz = output.task().nominalFrequencyHertz();
    if (!(Math.abs(hertz - nominalHertz) <= FREQUENCY_TOLERANCE * nominalHertz)) {
      int to = (int) Math.min(output.length(), COUNTED_CYCLES * output.samplesPerCycle());
      double counted = Crossings.hertz(output, 0, to);
      throw new CannotMeasureException(
          Double.isNaN(counted)
              ? "the supply before is no mains voltage: it does not swing about zero from cycle to"
                  + " cycle: is this the channel of the output?"
              : String.format(
                  Locale.ROOT,
                  "the supply before has about %.3g Hz, nominal %.4g Hz ± %.0f %%: is the nominal"
                      + " frequency right, and are there two cycles before the event?",
                  counted,
                  nominalHertz,
                  100 * FREQUENCY_TOLERANCE));
    }
  }
}

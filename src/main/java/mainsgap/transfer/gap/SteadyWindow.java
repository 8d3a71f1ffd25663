package mainsgap.transfer.gap;

import mainsgap.signal.Spectrum;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Whole cycles of a steady supply: as many as IEC 61000-4-7 asks for (10 at 50 Hz, 12 at 60 Hz), or
 * else as many as there are.
 *
 * @param from the first sample
 * @param cycles whole cycles
 */
public record SteadyWindow(Recording recording, double hertz, int from, int cycles) {
  private static final double STANDARD_SECONDS = 0.2;

  /** A single cycle does not tell its own frequency well enough for a spectrum. */
  private static final int FEWEST_CYCLES = 2;

  private static final int ORDERS = 40;

  /** Beyond its fit a supply is the same while it stays this close to it. */
  private static final double SAME_SHARE_OF_PEAK = 0.1;

  /** The last cycles before the loss; null where there are too few. */
  public static @Nullable SteadyWindow before(Recording recording, Supply supply) {
    double hertz = supply.model().frequencyHertz();
    int wanted = Spectrum.samples(standardCycles(recording), hertz, recording.time());
    int reach = Math.max(0, Math.min(supply.from(), supply.to() - wanted));
    int start = isSame(recording, supply, reach, supply.from()) ? reach : supply.from();
    int cycles = cyclesIn(recording, hertz, supply.to() - start);
    int from = supply.to() - Spectrum.samples(cycles, hertz, recording.time());
    return of(recording, hertz, from, cycles);
  }

  /** The first cycles of the settled supply; null where there are too few. */
  public static @Nullable SteadyWindow after(Recording recording, Supply supply) {
    double hertz = supply.model().frequencyHertz();
    int wanted = Spectrum.samples(standardCycles(recording), hertz, recording.time());
    int to = Math.min(recording.length(), Math.max(supply.to(), supply.from() + wanted));
    if (!isSame(recording, supply, supply.to(), to)) {
      to = supply.to();
    }
    return of(recording, hertz, supply.from(), cyclesIn(recording, hertz, to - supply.from()));
  }

  private static @Nullable SteadyWindow of(
      Recording recording, double hertz, int from, int cycles) {
    SteadyWindow window = new SteadyWindow(recording, hertz, from, cycles);
    return cycles < FEWEST_CYCLES || recording.isClippedIn(from, window.to()) ? null : window;
  }

  private static boolean isSame(Recording recording, Supply supply, int from, int to) {
    double squares = 0;
    for (double deviation : supply.deviationsIn(recording, from, to)) {
      squares += deviation * deviation;
    }
    double rms = Math.sqrt(squares / Math.max(1, to - from));
    return rms <= SAME_SHARE_OF_PEAK * recording.peakVolts();
  }

  private static int cyclesIn(Recording recording, double hertz, int samples) {
    int cycles = standardCycles(recording);
    while (cycles > 0 && Spectrum.samples(cycles, hertz, recording.time()) > samples) {
      cycles--;
    }
    return cycles;
  }

  private static int standardCycles(Recording recording) {
    return (int) Math.round(STANDARD_SECONDS * recording.task().nominalFrequencyHertz());
  }

  /** One after the last sample. */
  public int to() {
    return from + Spectrum.samples(cycles, hertz, recording.time());
  }

  public Spectrum spectrum() {
    return Spectrum.of(recording.volts(), recording.time(), from, cycles, hertz, ORDERS);
  }

  /** By subgroups where the window is the standard's, else by lines. */
  public Cleanness.Distortion distortion(Spectrum spectrum) {
    boolean standard = cycles == standardCycles(recording);
    return new Cleanness.Distortion(
        standard ? spectrum.subgroupDistortionPercent() : spectrum.lineDistortionPercent(), cycles);
  }

  public double rmsVolts() {
    return recording.rmsVolts(from, to() - 2);
  }
}

package mainsgap.transfer.gap;

import java.util.List;
import mainsgap.signal.Spectrum;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Takes the figures of a return from the recording, the instants and the fitted supplies. */
final class CleannessFigures {
  /** Peaks are those of averages over so long, which noise and spikes of one sample lift less. */
  private static final double PEAK_SECONDS = 20e-6;

  private static final double LOOSE_SHARE_OF_PEAK = 0.1;
  private static final double TIGHT_SHARE_OF_PEAK = 0.03;
  private static final int UNDERSHOOT_HALF_WAVES = 4;

  /** IEC 60050-441 parts re-ignition from restrike by a quarter of a cycle (from memory). */
  private static final double RESTRIKE_CYCLES = 0.25;

  /** The instants of one return on the capture's own time axis. */
  record ReturnInstants(double lossSeconds, double firstReturnSeconds, double returnSeconds) {}

  private final Recording recording;
  private final Supply before;
  private final Supply after;
  private final ReturnInstants instants;

  CleannessFigures(Recording recording, Supply before, Supply after, ReturnInstants instants) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.instants = instants;
  }

  /**
   * All figures.
   *
   * @param runs what feeds the load, in order
   */
  Cleanness figures(List<Segmentation.Run> runs) {
    int first = sampleAt(instants.firstReturnSeconds());
    SteadyWindow mains = SteadyWindow.before(recording, before);
    SteadyWindow settled = SteadyWindow.after(recording, after);
    Spectrum spectrum = settled == null ? null : settled.spectrum();
    GapFigures gap = new GapFigures(recording, instants.returnSeconds(), instants.returnSeconds());
    double nominal = recording.task().nominalVolts();
    return new Cleanness(
        Math.max(0, 100 * (peakVolts(first, after.to()) / recording.peakVolts() - 1)),
        recording.isClippedIn(first, after.to()) || recording.isPeakCutIn(first, after.to()),
        undershootPercent(),
        mains == null ? null : mains.distortion(mains.spectrum()),
        settled == null || spectrum == null ? null : settled.distortion(spectrum),
        spectrum == null ? null : (Double) (100 * spectrum.meanVolts() / nominal),
        settled == null
            ? null
            : (Double) (peakVolts(settled.from(), settled.to()) / settled.rmsVolts()),
        settled == null ? null : (Double) (100 * (settled.rmsVolts() / nominal - 1)),
        gap.settledMillis(after, LOOSE_SHARE_OF_PEAK),
        gap.settledMillis(after, TIGHT_SHARE_OF_PEAK),
        restrikes(runs),
        steepestVoltsPerMicrosecond(),
        new Cleanness.Residual(residualPercent(1), residualPercent(2), residualPercent(5)));
  }

  /** The first sample not before {@code seconds}. */
  private int sampleAt(double seconds) {
    return (int) Math.max(0, Math.ceil(recording.time().indexAt(seconds)));
  }

  private double peakVolts(int from, int to) {
    return Math.max(highestVolts(from, to, 1), highestVolts(from, to, -1));
  }

  /** The highest average of samples {@code from} to {@code to}, times {@code sign}. */
  private double highestVolts(int from, int to, int sign) {
    int width = Math.max(1, (int) (PEAK_SECONDS / recording.time().intervalSeconds()));
    double sum = 0;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = from; i < Math.min(to, recording.length()); i++) {
      sum += sign * recording.volts()[i];
      if (i - width >= from) {
        sum -= sign * recording.volts()[i - width];
      }
      if (i - width + 1 >= from) {
        highest = Math.max(highest, sum / width);
      }
    }
    return highest;
  }

  private @Nullable Double undershootPercent() {
    double degrees = after.model().angleDegreesAt(instants.returnSeconds());
    double half = recording.time().sampleRateHertz() / after.model().frequencyHertz() / 2;
    double start =
        recording.time().indexAt(instants.returnSeconds()) + (180 - degrees % 180) / 180 * half;
    int sign = degrees < 180 ? -1 : 1;
    double lowest = Double.POSITIVE_INFINITY;
    for (int k = 0; k < UNDERSHOOT_HALF_WAVES; k++) {
      int from = (int) Math.ceil(start + k * half);
      int to = (int) Math.ceil(start + (k + 1) * half);
      if (to > recording.length()) {
        return null;
      }
      lowest = Math.min(lowest, highestVolts(from, to, sign));
      sign = -sign;
    }
    return Math.max(0, 100 * (1 - lowest / recording.peakVolts()));
  }

  private int restrikes(List<Segmentation.Run> runs) {
    int least = recording.samplesIn(RESTRIKE_CYCLES * recording.task().cycleSeconds());
    int count = 0;
    for (int k = 2; k < runs.size(); k++) {
      Segmentation.Run run = runs.get(k);
      Segmentation.Run dead = runs.get(k - 1);
      if (run.part() == Segmentation.Part.BEFORE
          && dead.part() == Segmentation.Part.GAP
          && dead.length() >= least) {
        count++;
      }
    }
    return count;
  }

  private double steepestVoltsPerMicrosecond() {
    double end = instants.returnSeconds() + recording.task().cycleSeconds();
    int to = Math.min(recording.length(), sampleAt(end));
    double steepest = 0;
    for (int i = Math.max(1, sampleAt(instants.firstReturnSeconds())); i < to; i++) {
      steepest = Math.max(steepest, Math.abs(recording.volts()[i] - recording.volts()[i - 1]));
    }
    return steepest / (recording.time().intervalSeconds() * 1e6);
  }

  /** Null where the record ends before so many cycles. */
  private @Nullable Double residualPercent(int cycles) {
    int from = sampleAt(instants.returnSeconds());
    int to = from + recording.samplesIn(cycles * recording.task().cycleSeconds());
    if (to > recording.length()) {
      return null;
    }
    double squares = 0;
    for (double deviation : after.deviationsIn(recording, from, to)) {
      squares += deviation * deviation;
    }
    return 100 * Math.sqrt(squares / (to - from)) / recording.task().nominalVolts();
  }
}

package mainsgap.transfer.supply;

import mainsgap.signal.CycleRms;
import mainsgap.signal.Rails;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * One waveform in volts with what it is measured against. The array is owned and left unchanged.
 */
@SuppressWarnings("ArrayRecordComponent") // owned, read only in the measurement
public record Recording(double[] volts, TimeAxis time, Waveform waveform, MeasuringTask task) {

  public static Recording of(Waveform waveform, TimeAxis time, MeasuringTask task) {
    return new Recording(waveform.volts(), time, waveform, task);
  }

  /** The same with other voltages, which are owned. */
  public Recording with(double[] others) {
    return new Recording(others, time, waveform, task);
  }

  public int length() {
    return volts.length;
  }

  public double peakVolts() {
    return task.nominalPeakVolts();
  }

  public double samplesPerCycle() {
    return task.cycleSeconds() / time.intervalSeconds();
  }

  /** So many samples as {@code seconds} hold, at least 1. */
  public int samplesIn(double seconds) {
    return (int) Math.max(1, Math.round(seconds / time.intervalSeconds()));
  }

  /** The voltage at a fractional index, between its two neighbours. */
  double voltsAt(double index) {
    int before = (int) Math.floor(index);
    double part = index - before;
    return part == 0 ? volts[before] : (1 - part) * volts[before] + part * volts[before + 1];
  }

  /** The voltage of one code of the converter; 0 where samples are real numbers. */
  public double codeVolts() {
    return waveform.format().isWhole() ? Math.abs(waveform.scale().voltsPerCode()) : 0;
  }

  /** The root mean square of samples {@code from} (inclusive) to {@code to} (exclusive). */
  public double rmsVolts(int from, int to) {
    return CycleRms.of(volts, from, to);
  }

  /**
   * Whether any sample from {@code from} (inclusive) to {@code to} (exclusive) is clipped, and was
   * not replaced by another voltage.
   */
  public boolean isClippedIn(int from, int to) {
    for (int i = Math.max(0, from); i < Math.min(to, length()); i++) {
      if (waveform.isClippedAt(i) && volts[i] == waveform.voltsAt(i)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a peak there looks cut off though no rail is known: files name none. Codes come with
   * their rails.
   */
  public boolean isPeakCutIn(int from, int to) {
    return !waveform.format().isWhole() && Rails.isPeakCutIn(volts, from, to);
  }
}

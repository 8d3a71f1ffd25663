package mainsgap.simulation;

/** What tests ask of a voltage: its RMS and its peak over a stretch of time. */
final class Levels {
  private static final double STEP_SECONDS = 2e-6;

  private Levels() {}

  static double rmsOf(Voltage voltage, double fromSeconds, double seconds) {
    double squares = 0;
    long count = Math.round(seconds / STEP_SECONDS);
    for (long i = 0; i < count; i++) {
      double volts = voltage.voltsAt(fromSeconds + i * STEP_SECONDS);
      squares += volts * volts;
    }
    return Math.sqrt(squares / count);
  }

  static double peakOf(Voltage voltage, double fromSeconds, double seconds) {
    double peak = 0;
    for (double at = fromSeconds; at < fromSeconds + seconds; at += STEP_SECONDS) {
      peak = Math.max(peak, Math.abs(voltage.voltsAt(at)));
    }
    return peak;
  }
}

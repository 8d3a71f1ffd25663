package mainsgap.signal;

/** A fitted steady supply, which can be evaluated at any time. Immutable. */
public interface PeriodicModel {

  /** The voltage at {@code seconds} on the axis of the fit. */
  double voltsAt(double seconds);

  /**
   * The voltages at {@code count} times from {@code firstSeconds} on, each {@code intervalSeconds}
   * after the one before, a new array: those of {@link #voltsAt} but for rounding, in less time.
   */
  default double[] voltsEvery(double firstSeconds, double intervalSeconds, int count) {
    double[] volts = new double[count];
    for (int i = 0; i < count; i++) {
      volts[i] = voltsAt(firstSeconds + i * intervalSeconds);
    }
    return volts;
  }

  /** The frequency of the fundamental. */
  double frequencyHertz();

  /** The peak of the fundamental. */
  double amplitudeVolts();

  /**
   * The angle of the fundamental at {@code seconds} in degrees, 0 (inclusive) to 360 (exclusive); 0
   * is its positive-going zero crossing.
   */
  double angleDegreesAt(double seconds);

  /** The standard deviation of samples about the model at {@code seconds}. */
  double spreadVoltsAt(double seconds);
}

package mainsgap.signal;

/** A fitted steady supply, which can be evaluated at any time. Immutable. */
public interface PeriodicModel {

  /** The voltage at {@code seconds} on the axis of the fit. */
  double voltsAt(double seconds);

  /** Voltages at equidistant times, many at once. For one thread. */
  interface Row {
    /**
     * Fills in the voltages from a time on.
     *
     * @param volts its first {@code count} elements are overwritten
     */
    void fill(double[] volts, int count, double firstSeconds);
  }

  /** A row of times each {@code intervalSeconds} after the one before. */
  default Row every(double intervalSeconds) {
    return (volts, count, firstSeconds) -> {
      for (int i = 0; i < count; i++) {
        volts[i] = voltsAt(firstSeconds + i * intervalSeconds);
      }
    };
  }

  /** The voltages at {@code count} such times from {@code firstSeconds} on, a new array. */
  default double[] voltsEvery(double intervalSeconds, double firstSeconds, int count) {
    double[] volts = new double[count];
    every(intervalSeconds).fill(volts, count, firstSeconds);
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

  /** The same away from steps of its cycle; for a model that has none, that at any time. */
  default double usualSpreadVolts() {
    return spreadVoltsAt(0);
  }

  /** Whether its cycle has steps and rests of its own, as that of an inverter may. */
  default boolean hasSteps() {
    return false;
  }

  /** Whether it is vague at some angles: at its steps, or at notches that its load cuts. */
  default boolean isVagueInPlaces() {
    return hasSteps();
  }
}

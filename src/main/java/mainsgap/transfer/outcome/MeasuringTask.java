package mainsgap.transfer.outcome;

import mainsgap.signal.Event;

/**
 * What is to be measured in a capture.
 *
 * @param event the change of supply that the capture should hold
 * @param nominalVolts the nominal RMS voltage, above 0
 * @param nominalFrequencyHertz the nominal frequency, 50 or 60 in practice, 40 to 70 allowed
 */
public record MeasuringTask(Event event, double nominalVolts, double nominalFrequencyHertz) {

  /** Checks that the nominal values are those of an AC supply. */
  public MeasuringTask {
    if (!(nominalVolts > 0) || Double.isInfinite(nominalVolts)) {
      throw new IllegalArgumentException(
          "the nominal voltage is above 0 V RMS, found " + nominalVolts + " V");
    }
    if (!(nominalFrequencyHertz >= 40 && nominalFrequencyHertz <= 70)) {
      throw new IllegalArgumentException(
          "the nominal frequency is 40 to 70 Hz, found " + nominalFrequencyHertz + " Hz");
    }
  }

  /** The nominal peak voltage: RMS times the square root of two. */
  public double nominalPeakVolts() {
    return nominalVolts * Math.sqrt(2);
  }

  /** The duration of one nominal cycle in seconds. */
  public double cycleSeconds() {
    return 1 / nominalFrequencyHertz;
  }
}

package mainsgap.cli;

import mainsgap.signal.Capture;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The measurement of one capture among many, whose fault must not take the others along. */
final class SteadyMeasurement {
  private static final Logger LOG = LoggerFactory.getLogger(SteadyMeasurement.class);

  /** Measures; stands for {@link TransferMeasurement#measure}. */
  @FunctionalInterface
  interface Measurement {
    Outcome measure(Capture capture, MeasuringTask task);
  }

  private SteadyMeasurement() {}

  /** Measures {@code capture}; refused where the measurement itself fails. */
  static Outcome measure(Capture capture, MeasuringTask task) {
    return measure(capture, task, TransferMeasurement::measure);
  }

  static Outcome measure(Capture capture, MeasuringTask task, Measurement measurement) {
    try {
      return measurement.measure(capture, task);
    } catch (RuntimeException e) {
      LOG.error("the measurement failed on a capture, which counts as refused", e);
      return new Refused(
          "the measurement itself failed ("
              + e.getMessage()
              + "), a fault of the program: keep the capture, and report it");
    }
  }
}

package mainsgap.report;

import java.util.OptionalDouble;
import mainsgap.session.LoggedTrial;
import mainsgap.session.SessionHeader;
import mainsgap.signal.Capture;
import org.jspecify.annotations.Nullable;

/**
 * The output voltage of one trial, with the instants by which traces are laid over each other.
 *
 * @param name the unit and the trial
 * @param header of its session
 * @param capture the raw capture of the output
 * @param lossSeconds on the capture's own axis
 * @param returnSeconds on the same; null where there is none
 * @param angleSeconds the last positive-going zero crossing of the supply before, at or before the
 *     loss, on the same; null where not known
 */
public record AlignedTrace(
    String name,
    SessionHeader header,
    Capture capture,
    double lossSeconds,
    @Nullable Double returnSeconds,
    @Nullable Double angleSeconds) {

  /**
   * The trace of a trial.
   *
   * @throws ReportException if the trial tells no loss, so that there is nothing to align by
   */
  public static AlignedTrace of(
      String unit, SessionHeader header, LoggedTrial trial, Capture capture) {
    OptionalDouble loss = trial.number("lossMs");
    if (loss.isEmpty()) {
      throw new ReportException(
          "trial "
              + trial.number()
              + " of "
              + unit
              + " cannot be laid over others: it tells no loss ("
              + trial.sentence()
              + ")");
    }
    double lossSeconds = loss.getAsDouble() / 1e3;
    OptionalDouble angle = trial.number("pointOnWaveDeg");
    OptionalDouble hertz = trial.number("frequencyHz");
    Double angleSeconds =
        angle.isPresent() && hertz.isPresent() && hertz.getAsDouble() > 0
            ? (Double) (lossSeconds - angle.getAsDouble() / 360 / hertz.getAsDouble())
            : null;
    OptionalDouble back = trial.number("returnMs");
    return new AlignedTrace(
        unit + ", trial " + trial.number() + ": " + TrialWords.of(trial).plainTime(),
        header,
        // the other channels would only hold memory
        Capture.ofOutput(capture.time(), capture.output()),
        lossSeconds,
        back.isPresent() ? (Double) (back.getAsDouble() / 1e3) : null,
        angleSeconds);
  }
}

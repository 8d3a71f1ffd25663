package mainsgap.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import mainsgap.session.LoggedTrial;
import mainsgap.statistics.StatedValue;
import mainsgap.transfer.outcome.OutcomeNotes;
import mainsgap.transfer.outcome.Verdict;

/**
 * One trial as words, its time rounded by its uncertainty; "-" where there is none.
 *
 * @param plainTime the transfer time, or what stands in its place
 * @param statedTime the same with its uncertainty
 * @param result how it stands
 * @param angle at which the loss fell
 * @param residual the residual disturbance over the first cycle
 * @param remark why it is no plain pass, what has to be told beside a pass, and what a person added
 */
public record TrialWords(
    String plainTime,
    String statedTime,
    String result,
    String angle,
    String residual,
    String remark) {
  private static final String NONE = "-";

  /** The uncertainty of a time is no smaller than a tenth of a microsecond. */
  private static final double FINEST_MILLIS = 1e-4;

  /** The words for {@code trial}. */
  public static TrialWords of(LoggedTrial trial) {
    OptionalDouble angle = trial.number("pointOnWaveDeg");
    OptionalDouble residual = trial.number("residualPercent");
    return new TrialWords(
        time(trial, false),
        time(trial, true),
        result(trial),
        angle.isEmpty() ? NONE : Math.round(angle.getAsDouble()) % 360 + "°",
        residual.isEmpty() ? NONE : Wording.plain(residual.getAsDouble()) + " %",
        remark(trial));
  }

  private static String time(LoggedTrial trial, boolean withUncertainty) {
    double u = Math.max(FINEST_MILLIS, trial.number("expandedUncertaintyMs").orElse(0));
    OptionalDouble least = trial.number("transferTimeAtLeastMs");
    if (least.isPresent()) {
      return "at least " + millis(least.getAsDouble(), u, withUncertainty);
    }
    if (Boolean.FALSE.equals(trial.figures().get("interruption"))) {
      return "no gap over " + Readings.millis(u, u);
    }
    OptionalDouble transfer = trial.number("transferTimeMs");
    return transfer.isPresent()
        ? millis(transfer.getAsDouble(), u, withUncertainty)
        : withUncertainty ? NONE : Wording.isolated(trial.sentence());
  }

  private static String millis(double value, double u, boolean withUncertainty) {
    return withUncertainty ? StatedValue.of(value, u) + " ms" : Readings.millis(value, u);
  }

  private static String result(LoggedTrial trial) {
    TrialPoint point = TrialPoint.of(trial);
    if (point.isSetAside()) {
      return "set aside";
    }
    return trial
        .verdict()
        .map(Verdict::name)
        .orElse(trial.isRefused() ? point.kind().words() : "not judged");
  }

  private static String remark(LoggedTrial trial) {
    return Wording.isolated(String.join("; ", remarks(trial)));
  }

  /**
   * What has to be told beside a trial's time, a sentence each: why it was set aside, refused or is
   * no plain pass, what else the capture shows, and what a person added.
   */
  public static List<String> remarks(LoggedTrial trial) {
    List<String> sentences = new ArrayList<>();
    if (trial.setAsideReason() != null) {
      sentences.add(trial.setAsideReason());
    }
    sentences.addAll(trial.notes());
    if (trial.load() != null) {
      sentences.add("load: " + trial.load().words());
    }
    String reason = reason(trial);
    if (!reason.isEmpty()) {
      sentences.add(reason);
    }
    OutcomeNotes.of(trial.outcome()).stream()
        .filter(note -> !reason.contains(note))
        .forEach(sentences::add);
    return sentences;
  }

  /** Why a trial is no plain pass; empty where it is one, or where nothing is declared. */
  private static String reason(LoggedTrial trial) {
    if (trial.isRefused()) {
      return trial.sentence();
    }
    return trial.verdict().orElse(null) == Verdict.PASS || trial.verdictReason() == null
        ? ""
        : trial.verdictReason();
  }
}

package mainsgap.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.arming.LoopListener;
import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.session.Addition;
import mainsgap.session.Trial;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the trials of a series and passes on what the loop tells. The figures are those of the
 * whole session: trials that stood in it before this series count.
 */
final class Tally implements LoopListener {
  private final SeriesListener face;
  private final @Nullable DeclaredClaim claim;
  private final DecisionRule rule;
  private final int earlier;
  private final Map<Integer, TrialReport> trials = new LinkedHashMap<>();
  private RunningFigures figures;

  Tally(
      SeriesListener face,
      @Nullable DeclaredClaim claim,
      DecisionRule rule,
      List<TrialReport> earlier) {
    this.face = face;
    this.claim = claim;
    this.rule = rule;
    this.earlier = earlier.size();
    earlier.forEach(trial -> trials.put(trial.number(), trial));
    this.figures = RunningFigures.of(trials.values(), claim, rule);
  }

  /** The trials of this run. */
  List<TrialReport> trials() {
    return new ArrayList<>(trials.values()).subList(earlier, trials.size());
  }

  RunningFigures figures() {
    return figures;
  }

  @Override
  public void entered(LoopState state) {
    face.entered(state);
  }

  @Override
  public void prompted(Prompt prompt) {
    face.prompted(prompt);
  }

  @Override
  public void progressed(Progress progress) {
    face.progressed(progress);
  }

  @Override
  public void noted(String sentence) {
    face.noted(sentence);
  }

  @Override
  public void trialLogged(Trial trial) {
    TrialReport report = TrialReport.of(trial);
    keep(report);
    face.trialFinished(report, figures);
    face.trialCaptured(report, trial.capture());
  }

  @Override
  public void added(Addition addition) {
    TrialReport before = addition.trial() == null ? null : trials.get(addition.trial());
    TrialReport now = before == null ? null : before.with(addition);
    if (now != null) {
      keep(now);
    }
    face.added(addition, now, figures);
  }

  @Override
  public void notAdded(Addition addition, String why) {
    face.notAdded(addition, why);
  }

  private void keep(TrialReport trial) {
    trials.put(trial.number(), trial);
    figures = RunningFigures.of(trials.values(), claim, rule);
  }
}

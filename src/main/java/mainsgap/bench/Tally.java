package mainsgap.bench;

import java.util.ArrayList;
import java.util.List;
import mainsgap.arming.LoopListener;
import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.session.Trial;
import mainsgap.transfer.DecisionRule;
import mainsgap.transfer.DeclaredClaim;
import mainsgap.transfer.Outcome;
import mainsgap.transfer.SeriesVerdict;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the trials of a series and passes on what the loop tells. The figures are those of the
 * whole session: trials that stood in it before this series count.
 */
final class Tally implements LoopListener {
  private final SeriesListener face;
  private final @Nullable DeclaredClaim claim;
  private final DecisionRule rule;
  private final List<Outcome> outcomes;
  private final List<TrialReport> trials = new ArrayList<>();
  private RunningFigures figures = RunningFigures.NONE;

  Tally(
      SeriesListener face,
      @Nullable DeclaredClaim claim,
      DecisionRule rule,
      List<Outcome> earlier) {
    this.face = face;
    this.claim = claim;
    this.rule = rule;
    this.outcomes = new ArrayList<>(earlier);
  }

  List<TrialReport> trials() {
    return trials;
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
    TrialReport report =
        new TrialReport(trial.number(), trial.at(), trial.outcome(), trial.judgement());
    trials.add(report);
    outcomes.add(trial.outcome());
    figures = RunningFigures.of(SeriesVerdict.judge(outcomes, claim, rule));
    face.trialFinished(report, figures);
  }
}

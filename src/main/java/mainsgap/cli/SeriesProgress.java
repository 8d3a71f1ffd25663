package mainsgap.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesListener;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.TrialReport;
import mainsgap.report.OutcomeWords;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/** Tells a person on standard error how a series goes. */
final class SeriesProgress implements SeriesListener {
  private static final long SECONDS_BETWEEN_LINES = 10;

  private final Surroundings surroundings;
  private final @Nullable DeclaredClaim claim;
  private final boolean isReal;
  private final int wanted;
  private boolean switchCommanded;
  private int measured;
  private String waitingFor = "";
  private long nextLineSeconds;

  SeriesProgress(Surroundings surroundings, SeriesRequest request) {
    this.surroundings = surroundings;
    this.claim = request.claim();
    this.isReal = request.instrument() instanceof InstrumentChoice.Real;
    this.wanted = request.trials();
  }

  @Override
  public void connected(String instrument) {
    if (isReal) {
      surroundings.progress("%s", TextWrap.hanging("scope    ", instrument));
    }
  }

  @Override
  public void sessionOpened(Path file) {
    surroundings.progress("session  %s", file);
    if (isReal) {
      noted(
          "the unit must run from mains and be settled before the first trial: one that is still on"
              + " its battery shows no gap");
    }
  }

  @Override
  public void planned(List<String> explanation) {
    explanation.forEach(
        sentence -> surroundings.progress("%s", TextWrap.hanging("plan     ", sentence)));
  }

  @Override
  public void switchCommanded(String words) {
    switchCommanded = true;
    surroundings.progress("%s", TextWrap.hanging("switch   ", words));
  }

  /** Whether the program moves the mains switch. */
  boolean isSwitchCommanded() {
    return switchCommanded;
  }

  @Override
  public void prompted(Prompt prompt) {
    if (isReal) {
      String sentence = prompt.sentence();
      surroundings.progress(
          "%n>>> %s%s   (%d of %d measured)",
          sentence.substring(0, 1).toUpperCase(Locale.ROOT),
          sentence.substring(1),
          measured,
          wanted);
    }
  }

  /** A line once a wait is felt, then one every few seconds. */
  @Override
  public void progressed(Progress progress) {
    if (!progress.what().equals(waitingFor)) {
      waitingFor = progress.what();
      nextLineSeconds = 1;
    }
    if (progress.elapsed().toSeconds() >= nextLineSeconds) {
      nextLineSeconds = progress.elapsed().toSeconds() + SECONDS_BETWEEN_LINES;
      surroundings.progress(
          "    waiting for %s, at most %d s more%s",
          progress.what(),
          Math.max(1, progress.left().toSeconds()),
          progress.canBeCutShort() ? " (Enter goes on now)" : "");
    }
  }

  @Override
  public void noted(String sentence) {
    surroundings.progress("%s", TextWrap.hanging("note     ", sentence));
  }

  @Override
  public void trialFinished(TrialReport trial, RunningFigures figures) {
    waitingFor = "";
    if (trial.outcome().kind() != Outcome.Kind.REFUSED) {
      measured++;
    }
    surroundings.progress("%s", TextWrap.paragraph(line(trial, claim)));
  }

  /** One trial in one line; why a trial failed is plain from its figure and the declared time. */
  static String line(TrialReport trial, @Nullable DeclaredClaim claim) {
    String reason = TrialTable.reason(trial.outcome(), trial.judgement());
    String time = OutcomeWords.of(trial.outcome()).phrase();
    if (trial.judgement() == null || claim == null) {
      return line(trial.number(), time, reason);
    }
    String verdict = trial.judgement().verdict().name();
    return line(
        trial.number(),
        time + "  " + verdict,
        trial.judgement().verdict() == Verdict.INCONCLUSIVE
            ? reason
            : "declared " + claim.asPrinted());
  }

  private static String line(int number, String figures, String remark) {
    String start = String.format(Locale.ROOT, "trial %-3d %s", number, figures);
    return remark.isEmpty() ? start : start + ": " + remark;
  }
}

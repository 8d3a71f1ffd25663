package mainsgap.desk.trials;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesListener;
import mainsgap.bench.TrialReport;
import mainsgap.desk.manners.UiThread;
import mainsgap.session.Addition;
import mainsgap.signal.Capture;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * Hears the series on its thread and tells the model on the UI thread, in the same order. Of the
 * progress of a wait only the latest is told, once the UI thread gets to it.
 */
final class SeriesEars implements SeriesListener {
  private final TrialsModel model;
  private final UiThread ui;
  private final AtomicReference<@Nullable Progress> latest = new AtomicReference<>();

  SeriesEars(TrialsModel model, UiThread ui) {
    this.model = model;
    this.ui = ui;
  }

  @Override
  public void measures(String unit, MeasuringTask task, @Nullable DeclaredClaim claim) {
    ui.run(() -> model.book().measures(unit, task, claim));
  }

  @Override
  public void connected(String instrument) {
    ui.run(() -> model.course().noted(instrument));
  }

  @Override
  public void sessionOpened(Path file) {
    ui.run(() -> model.book().sessionOpened(file));
  }

  @Override
  public void planned(List<String> explanation) {
    ui.run(() -> model.course().planned(explanation));
  }

  @Override
  public void switchCommanded(String words) {
    ui.run(() -> model.course().switchCommanded(words));
  }

  @Override
  public void entered(LoopState state) {
    ui.run(() -> model.course().entered(state));
  }

  @Override
  public void prompted(Prompt prompt) {
    ui.run(() -> model.course().prompted(prompt));
  }

  @Override
  public void progressed(Progress progress) {
    if (latest.getAndSet(progress) == null) {
      ui.run(
          () -> {
            Progress told = latest.getAndSet(null);
            if (told != null) {
              model.course().progressed(told);
            }
          });
    }
  }

  @Override
  public void noted(String sentence) {
    ui.run(() -> model.course().noted(sentence));
  }

  @Override
  public void trialFinished(TrialReport trial, RunningFigures figures) {
    ui.run(() -> model.trialFinished(trial, figures));
  }

  @Override
  public void trialCaptured(TrialReport trial, Capture capture) {
    ui.run(() -> model.trialCaptured(trial, capture));
  }

  @Override
  public void earlierTrials(List<TrialReport> trials, RunningFigures figures) {
    ui.run(() -> model.book().earlierTrials(trials, figures));
  }

  @Override
  public void added(Addition addition, @Nullable TrialReport trial, RunningFigures figures) {
    ui.run(() -> model.added(trial, figures));
  }

  @Override
  public void notAdded(Addition addition, String why) {
    ui.run(() -> model.notAdded(why));
  }
}

package mainsgap.desk.trials;

import java.nio.file.Path;
import java.util.List;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.bench.KeptSession;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * What has been measured: the trials of the session, their figures, and where all is kept. For the
 * UI thread.
 */
final class TrialBook {
  private final ObservableList<TrialReport> trials = FXCollections.observableArrayList();
  private final ObservableList<TrialReport> shownTrials =
      FXCollections.unmodifiableObservableList(trials);
  private final ReadOnlyObjectWrapper<@Nullable TrialReport> last = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable DrawnTrial> drawn = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<RunningFigures> figures =
      new ReadOnlyObjectWrapper<>(RunningFigures.NONE);
  private final ReadOnlyObjectWrapper<@Nullable DeclaredClaim> claim =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Evidence> evidence = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyIntegerWrapper wanted = new ReadOnlyIntegerWrapper();
  private final ReadOnlyStringWrapper title = new ReadOnlyStringWrapper("");
  private @Nullable MeasuringTask task;

  /** All trials of the session, refused and set-aside ones too. */
  ObservableList<TrialReport> trials() {
    return shownTrials;
  }

  /** The newest trial of this run; null before the first. */
  ReadOnlyObjectProperty<@Nullable TrialReport> lastProperty() {
    return last.getReadOnlyProperty();
  }

  /** The newest trial with its capture, once it is ready to be drawn. */
  ReadOnlyObjectProperty<@Nullable DrawnTrial> drawnProperty() {
    return drawn.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<RunningFigures> figuresProperty() {
    return figures.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable DeclaredClaim> claimProperty() {
    return claim.getReadOnlyProperty();
  }

  /** Where the series is kept; null before its session is open. */
  ReadOnlyObjectProperty<@Nullable Evidence> evidenceProperty() {
    return evidence.getReadOnlyProperty();
  }

  /** How many trials the session is to have, measured and counted; 0 before a series has begun. */
  ReadOnlyIntegerProperty wantedProperty() {
    return wanted.getReadOnlyProperty();
  }

  /** The unit and what is declared of it. */
  ReadOnlyStringProperty titleProperty() {
    return title.getReadOnlyProperty();
  }

  /** What is measured; null before a series has begun. */
  @Nullable MeasuringTask task() {
    return task;
  }

  /** A series begins that is to end with so many trials. */
  void begins(int wantedTrials) {
    wanted.set(wantedTrials);
    task = null;
    trials.clear();
    last.set(null);
    drawn.set(null);
    figures.set(RunningFigures.NONE);
    evidence.set(null);
  }

  void measures(String unit, MeasuringTask measured, @Nullable DeclaredClaim declared) {
    task = measured;
    claim.set(declared);
    title.set(
        unit
            + " · "
            + (declared == null ? "no declared time" : "declared " + declared.asPrinted()));
  }

  void sessionOpened(Path file) {
    evidence.set(new Evidence(file, null));
  }

  void earlierTrials(List<TrialReport> earlier, RunningFigures counted) {
    trials.setAll(earlier);
    figures.set(counted);
  }

  void trialFinished(TrialReport trial, RunningFigures counted) {
    trials.add(trial);
    figures.set(counted);
    last.set(trial);
  }

  /** Takes it only where no newer trial has come in since it was captured. */
  void drawn(DrawnTrial ready) {
    TrialReport newest = last.get();
    if (newest != null && newest.number() == ready.trial().number()) {
      drawn.set(ready);
    }
  }

  /** Something was added; {@code trial} is as it is now, null where it is about none. */
  void added(@Nullable TrialReport trial, RunningFigures counted) {
    figures.set(counted);
    if (trial == null) {
      return;
    }
    trials.replaceAll(shown -> shown.number() == trial.number() ? trial : shown);
    TrialReport newest = last.get();
    if (newest != null && newest.number() == trial.number()) {
      last.set(trial);
    }
  }

  void ended(SeriesEnd end) {
    if (end.session() != null) {
      figures.set(end.figures());
      evidence.set(new Evidence(end.session(), end.lastSeal()));
    }
  }

  /** The session as it was read again after something was added to it. */
  void kept(KeptSession session) {
    trials.setAll(session.trials());
    figures.set(session.figures());
    evidence.set(new Evidence(session.session().file(), session.session().lastSeal()));
    TrialReport newest = last.get();
    if (newest != null) {
      last.set(session.trials().get(newest.number() - 1));
    }
  }
}

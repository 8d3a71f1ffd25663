package mainsgap.desk.findings;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.desk.manners.Background;
import mainsgap.desk.pictures.TracePane;
import mainsgap.desk.trace.TraceScene;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionReader;
import mainsgap.signal.Capture;
import mainsgap.transfer.FittedSupplies;
import org.jspecify.annotations.Nullable;

/**
 * The trial that is opened again: its raw capture is read from the session, held against its seal,
 * and fitted anew, beside the UI thread, on which this is used.
 */
final class OpenedTrial {
  private final NewestWork work;
  private final ReadOnlyObjectWrapper<@Nullable TrialRow> trial = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable TraceScene> scene = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper whyNone = new ReadOnlyStringWrapper("");

  OpenedTrial(Background background) {
    work = new NewestWork(background);
  }

  /** Which one; null where none is. */
  ReadOnlyObjectProperty<@Nullable TrialRow> trialProperty() {
    return trial.getReadOnlyProperty();
  }

  /** Its picture; null until it is made, or where it cannot be. */
  ReadOnlyObjectProperty<@Nullable TraceScene> sceneProperty() {
    return scene.getReadOnlyProperty();
  }

  /** Why there is no picture yet; empty where there is one. */
  ReadOnlyStringProperty whyNoneProperty() {
    return whyNone.getReadOnlyProperty();
  }

  void open(TrialRow row) {
    scene.set(null);
    whyNone.set("Reading the raw capture …");
    trial.set(row);
    work.ask(() -> sceneOf(row), made -> shown(row, made), e -> notRead(row, e));
  }

  void close() {
    trial.set(null);
    scene.set(null);
    whyNone.set("");
  }

  private static TraceScene sceneOf(TrialRow row) {
    SessionHeader header = row.session().kept().session().header();
    try (SessionReader reader = SessionReader.open(row.session().file())) {
      Capture capture = reader.capture(row.key().number());
      return TracePane.sceneOf(
          capture,
          row.trial().outcome(),
          FittedSupplies.of(capture, header.task()),
          header.claim());
    }
  }

  private void shown(TrialRow row, TraceScene made) {
    if (row.equals(trial.get())) {
      whyNone.set("");
      scene.set(made);
    }
  }

  private void notRead(TrialRow row, RuntimeException fault) {
    if (row.equals(trial.get())) {
      whyNone.set("The raw capture could not be shown: " + fault.getMessage() + ". Esc goes back.");
    }
  }
}

package mainsgap.desk.rig;

import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.bench.RigCheck;
import mainsgap.bench.RigCheckEnd;
import mainsgap.bench.SeriesRequest;
import mainsgap.desk.manners.DeskTools;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/** A check of the rig, which runs beside the UI thread. For the UI thread. */
final class RigChecking {
  private final DeskTools tools;
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper(this, "running");
  private final ReadOnlyStringWrapper progress = new ReadOnlyStringWrapper(this, "progress", "");
  private final ReadOnlyObjectWrapper<@Nullable RigCheckEnd> end =
      new ReadOnlyObjectWrapper<>(this, "end", null);
  private final ReadOnlyBooleanWrapper outdated = new ReadOnlyBooleanWrapper(this, "outdated");
  private StopRequest stop = new StopRequest();

  RigChecking(DeskTools tools) {
    this.tools = tools;
  }

  ReadOnlyBooleanProperty runningProperty() {
    return running.getReadOnlyProperty();
  }

  boolean isRunning() {
    return running.get();
  }

  /** What is being done. */
  ReadOnlyStringProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** How the last check ended; null where there was none. */
  ReadOnlyObjectProperty<@Nullable RigCheckEnd> endProperty() {
    return end.getReadOnlyProperty();
  }

  /** Whether something was changed since. */
  ReadOnlyBooleanProperty outdatedProperty() {
    return outdated.getReadOnlyProperty();
  }

  /** Starts a check of the rig of {@code request}. */
  void start(SeriesRequest request) {
    if (running.get()) {
      return;
    }
    stop = new StopRequest();
    StopRequest mine = stop;
    running.set(true);
    outdated.set(false);
    progress.set("beginning");
    tools
        .background()
        .run(
            () -> RigCheck.run(request, said -> tools.ui().run(() -> progress.set(said)), mine),
            this::ended,
            failed ->
                ended(
                    new RigCheckEnd(
                        RigCheckEnd.Kind.WRONG_USE,
                        String.valueOf(failed.getMessage()),
                        "",
                        null)));
  }

  /** Asks it to stop. */
  void stop() {
    stop.request();
    if (running.get()) {
      progress.set("stopping");
    }
  }

  /** What was seen is no more of the rig as it is set. */
  void rigChanged() {
    outdated.set(end.get() != null || running.get());
  }

  /** Another rig: nothing is known of it. */
  void forget() {
    stop();
    end.set(null);
    outdated.set(false);
  }

  private void ended(RigCheckEnd how) {
    end.set(stop.isRequested() && how.seen() == null ? stopped(how) : how);
    progress.set("");
    running.set(false);
  }

  /** A link that was waited for may fail before it hears of the stop. */
  private static RigCheckEnd stopped(RigCheckEnd how) {
    return new RigCheckEnd(RigCheckEnd.Kind.STOPPED, how.sentence(), how.instrument(), null);
  }
}

package mainsgap.desk.rig;

import java.time.Duration;
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
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;

/** A check of the rig, which runs beside the UI thread. For the UI thread. */
final class RigChecking {
  private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(1);

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

  /** Starts a check of the rig of {@code request}, or one after the other until it is stopped. */
  void start(SeriesRequest request, boolean again) {
    if (running.get()) {
      return;
    }
    stop = new StopRequest();
    StopRequest mine = stop;
    end.set(null);
    running.set(true);
    outdated.set(false);
    progress.set("beginning");
    tools
        .background()
        .run(
            () -> again ? lookAgainAndAgain(request, mine) : look(request, mine),
            this::ended,
            failed ->
                ended(
                    new RigCheckEnd(
                        RigCheckEnd.Kind.WRONG_USE,
                        String.valueOf(failed.getMessage()),
                        "",
                        null)));
  }

  private RigCheckEnd look(SeriesRequest request, StopRequest mine) {
    return RigCheck.run(request, said -> tools.ui().run(() -> progress.set(said)), mine);
  }

  /** Until it is stopped, or nothing is seen any more; gives what was seen last, or why nothing. */
  private RigCheckEnd lookAgainAndAgain(SeriesRequest request, StopRequest mine) {
    RigCheckEnd seen = look(request, mine);
    while (seen.seen() != null) {
      RigCheckEnd shown = seen;
      tools.ui().run(() -> end.set(shown));
      try {
        tools.clock().pause(BETWEEN_LOOKS, mine);
      } catch (StoppedException e) {
        return shown;
      }
      RigCheckEnd next = look(request, mine);
      if (next.seen() == null && mine.isRequested()) {
        return shown;
      }
      seen = next;
    }
    return seen;
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
    if (running.get() && end.get() != null) {
      stop();
    }
    outdated.set(end.get() != null || running.get());
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

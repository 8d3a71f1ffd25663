package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.List;
import mainsgap.arming.RigComplaint;
import mainsgap.bench.RigCheckEnd;
import org.jspecify.annotations.Nullable;

/**
 * What is to be said of the rig as a whole: what to do, what is being looked at, or what was found.
 *
 * @param look what it looks like
 * @param headline the one sentence that matters
 * @param lines what else was found, the worst first
 */
record CheckStory(Look look, String headline, List<Line> lines) {

  /** What it looks like. */
  enum Look {
    TO_DO,
    BUSY,
    RIGHT,
    WRONG
  }

  /** Another sentence; whether it has to be heeded before a series. */
  record Line(String sentence, boolean mustBeMended) {}

  /** Takes its own copy. */
  CheckStory {
    lines = List.copyOf(lines);
  }

  /** The story of {@code model} now. */
  static CheckStory of(RigModel model) {
    RigChecking checking = model.checking();
    RigCheckEnd end = checking.endProperty().get();
    if (checking.isRunning() && (end == null || checking.outdatedProperty().get())) {
      return new CheckStory(
          Look.BUSY, "checking the rig: " + checking.progressProperty().get(), List.of());
    }
    String whyNotReady = model.source().whyNotReady().get();
    if (model.lockedProperty().get()) {
      return new CheckStory(
          Look.BUSY, "a series runs on this rig: nothing is changed now", List.of());
    }
    if (end != null && !checking.outdatedProperty().get()) {
      return ofEnd(end, checking.isRunning() ? "" : whyNotReady);
    }
    if (!whyNotReady.isEmpty()) {
      return new CheckStory(Look.TO_DO, whyNotReady, List.of());
    }
    return new CheckStory(
        Look.TO_DO,
        end == null
            ? "all is set: check the rig by a few cycles of its live signal"
            : "the rig was changed since it was checked: check it again",
        List.of());
  }

  private static CheckStory ofEnd(RigCheckEnd end, String whyNotReady) {
    List<Line> lines = new ArrayList<>();
    RigCheckEnd.@Nullable Seen seen = end.seen();
    if (seen != null) {
      for (RigComplaint one : seen.complaints()) {
        if (!one.sentence().equals(end.sentence())) {
          lines.add(new Line(one.sentence(), one.kind().mustBeMended()));
        }
      }
    }
    if (!whyNotReady.isEmpty()) {
      lines.add(new Line(whyNotReady, true));
    }
    if (!end.instrument().isEmpty()) {
      lines.add(new Line("seen through " + end.instrument(), false));
    }
    return new CheckStory(
        end.kind() == RigCheckEnd.Kind.RIGHT
            ? Look.RIGHT
            : end.kind() == RigCheckEnd.Kind.STOPPED ? Look.TO_DO : Look.WRONG,
        headline(end),
        lines);
  }

  private static String headline(RigCheckEnd end) {
    return switch (end.kind()) {
      case STOPPED -> "the check was stopped: nothing is known of the rig";
      case INSTRUMENT_FAILED -> "the scope could not be reached or failed: " + end.sentence();
      case RIGHT, NOT_RIGHT, WRONG_USE -> end.sentence();
    };
  }
}

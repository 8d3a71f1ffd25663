package mainsgap.bench;

import java.nio.file.Path;
import java.util.List;
import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.session.Addition;
import mainsgap.signal.Capture;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/** Hears how a series goes, on the thread that runs it; must return soon. */
public interface SeriesListener {

  /** What is about to be measured, of which unit, against which claim; null where none is given. */
  default void measures(String unit, MeasuringTask task, @Nullable DeclaredClaim claim) {}

  /** An instrument answers: who it says it is. */
  default void connected(String instrument) {}

  /** The session file is open. */
  default void sessionOpened(Path file) {}

  /** The capture plan is made: what was chosen and why, one sentence each. */
  default void planned(List<String> explanation) {}

  /** The program commands the mains switch: which one, and how it closes it. */
  default void switchCommanded(String words) {}

  /** The bench has come to {@code state}. */
  default void entered(LoopState state) {}

  /** The hand on the switch is asked for a move. */
  default void prompted(Prompt prompt) {}

  /** A wait goes on; about ten times a second at most. */
  default void progressed(Progress progress) {}

  /** One sentence that the user should read. */
  default void noted(String sentence) {}

  /** A trial is logged; the figures count it. */
  default void trialFinished(TrialReport trial, RunningFigures figures) {}

  /**
   * The raw capture of the trial that has just finished. The listener alone holds it: one that
   * keeps more than the last keeps a record of up to the planned length each.
   */
  default void trialCaptured(TrialReport trial, Capture capture) {}

  /** The session has trials of earlier runs; the figures count them. */
  default void earlierTrials(List<TrialReport> trials, RunningFigures figures) {}

  /** What a person added is in the log; the trial as it is now, null where it is about none. */
  default void added(Addition addition, @Nullable TrialReport trial, RunningFigures figures) {}

  /** What a person wanted to add was not taken: why, in one sentence. */
  default void notAdded(Addition addition, String why) {}
}

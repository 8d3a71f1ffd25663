package mainsgap.arming;

import mainsgap.session.Addition;
import mainsgap.session.Trial;

/** Hears how the loop goes, on the thread that owns the instrument; must return soon. */
public interface LoopListener {

  /** The bench has come to {@code state}. */
  void entered(LoopState state);

  /** The hand on the switch is asked for a move. */
  void prompted(Prompt prompt);

  /** A wait goes on. */
  void progressed(Progress progress);

  /** One sentence that the user should read. */
  void noted(String sentence);

  /** A trial is durable in the log. */
  void trialLogged(Trial trial);

  /** What a person added is durable in the log. */
  void added(Addition addition);

  /** What a person wanted to add was not taken: why, in one sentence. */
  void notAdded(Addition addition, String why);
}

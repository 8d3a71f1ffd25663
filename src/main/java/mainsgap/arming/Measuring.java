package mainsgap.arming;

import mainsgap.signal.Capture;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/** What becomes of a capture: pure, and unaware of how it was caught. */
public interface Measuring {

  /** The measurement; a capture that carries none is refused, never an exception. */
  Outcome measure(Capture capture);

  /** The outcome against the declared claim; null where none is given or the trial is refused. */
  @Nullable Judgement judge(Outcome outcome);
}

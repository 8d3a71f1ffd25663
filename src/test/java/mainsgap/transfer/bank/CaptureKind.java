package mainsgap.transfer.bank;

import mainsgap.transfer.outcome.Outcome;

/** A kind of generated capture, hostile in one way. */
public interface CaptureKind {
  /** The name in the table. */
  String name();

  /** The capture of {@code seed}; the same each time. */
  KnownCapture capture(long seed);

  /** The outcome that the capture carries. */
  Outcome.Kind carries();

  /**
   * Whether what is left on the load may leave the sine with the sine's own slope, so that no
   * instant can be told well: such kinds stay out of the overall gate.
   */
  boolean leavesTangentially();

  /**
   * Whether the output always comes back within a rest of its cycle, where nothing shows it: how
   * well it is located then is no figure of the measurement, only how well its interval holds.
   */
  default boolean returnsWithinARest() {
    return false;
  }
}

package mainsgap.transfer.outcome;

/** What a trial, or a series, says of a declared transfer time. */
public enum Verdict {
  /** Shown to be within the declared time. */
  PASS,
  /** Shown to be longer than the declared time. */
  FAIL,
  /** Neither is shown. */
  INCONCLUSIVE
}

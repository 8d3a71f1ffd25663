package mainsgap.transfer.outcome;

/**
 * The capture carries no measurement.
 *
 * @param reason one sentence: what is wrong, found against allowed, what to change
 * @param isWithoutEvent whether nothing was seen to happen, and nothing is wrong beside that
 */
public record Refused(String reason, boolean isWithoutEvent) implements Outcome {

  /** Something is wrong. */
  public Refused(String reason) {
    this(reason, false);
  }

  @Override
  public Kind kind() {
    return Kind.REFUSED;
  }

  @Override
  public String sentence() {
    return "refused: " + reason;
  }
}

package mainsgap.transfer;

/**
 * The capture carries no measurement.
 *
 * @param reason one sentence: what is wrong, found against allowed, what to change
 */
public record Refused(String reason) implements Outcome {

  @Override
  public Kind kind() {
    return Kind.REFUSED;
  }

  @Override
  public String sentence() {
    return "refused: " + reason;
  }
}

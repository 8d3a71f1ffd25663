package mainsgap.transfer.tolerance;

import java.util.List;

/**
 * Where a deviation stands on one tolerance curve.
 *
 * @param curve the curve's name
 * @param standing as far as the curve goes
 * @param cautions why the standing is only indicative; empty where it is more
 * @param sentence the whole in words
 */
public record ToleranceFinding(
    String curve, Standing standing, List<String> cautions, String sentence) {

  /** Where a deviation stands. */
  public enum Standing {
    /** No worse than the curve allows. */
    INSIDE,
    /** Worse. */
    OUTSIDE,
    /** The duration is known too badly to tell. */
    TOO_CLOSE,
    /** The curve says nothing of such a deviation. */
    NOT_COVERED
  }

  /** Takes its own copy. */
  public ToleranceFinding {
    cautions = List.copyOf(cautions);
  }

  /** Whether the curve is out of its scope here, or the standing rests on unconfirmed points. */
  public boolean isIndicative() {
    return !cautions.isEmpty();
  }
}

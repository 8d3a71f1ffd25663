package mainsgap.arming;

import java.util.List;
import java.util.function.Consumer;

/**
 * The switch upstream of the unit. It is asked, and what it did is seen in the signal: no answer
 * means that it moved. What is not said otherwise fits a hand. Software is no safety device.
 */
public interface MainsSwitch {

  /**
   * Asks for the move. A hand is prompted and not waited for; a commanded switch has been told, and
   * has confirmed as far as it can, when this returns.
   *
   * @param hand hears the prompt where a person makes the move
   * @throws MainsSwitchException where a commanded switch failed
   */
  void ask(Prompt prompt, Consumer<Prompt> hand);

  /** Who closes it. */
  default ClosedBy closedBy() {
    return ClosedBy.HAND;
  }

  /** Where it stands, as far as it tells. */
  default SwitchPosition position() {
    return SwitchPosition.UNKNOWN;
  }

  /** Whether it opens at an angle of one's choice. */
  default boolean choosesAngle() {
    return false;
  }

  /**
   * Opens it at an angle of the mains, 0 to 360.
   *
   * @throws MainsSwitchException where it failed
   */
  default void openAt(double degrees) {
    throw new IllegalStateException("this switch does not choose the angle at which it opens");
  }

  /**
   * Forbids a commanded switch to close, from now on and for good. Returns at once, whoever is in
   * the middle of a move. Any thread may call it, at any moment.
   */
  default void closeNoMore() {}

  /**
   * Opens a commanded switch at once and for good: from now on it closes no more. A hand is not
   * moved by this. Any thread may call it, at any moment.
   *
   * @throws MainsSwitchException where it could not be opened
   */
  default void emergencyOff() {}

  /**
   * Makes sure, at the end of a series, that a commanded switch is open and closes no more.
   *
   * @throws MainsSwitchException where it could not be opened
   */
  default void leaveOff() {}

  /** What was asked of a commanded switch since the last call, oldest first. */
  default List<SwitchDeed> takeDeeds() {
    return List.of();
  }
}

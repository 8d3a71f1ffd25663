package mainsgap.arming;

import java.util.function.Consumer;

/**
 * The switch upstream of the unit. It is asked, and what it did is seen in the signal: no answer
 * means that it moved. Software is no safety device.
 */
public interface MainsSwitch {

  /**
   * Asks for the move and returns without waiting for it.
   *
   * @param hand hears the prompt where a person makes the move
   */
  void ask(SwitchMove move, Consumer<Prompt> hand);
}

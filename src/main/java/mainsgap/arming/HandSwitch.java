package mainsgap.arming;

import java.util.function.Consumer;

/** A hand on the switch: it is prompted, and the signal shows what it did. */
public final class HandSwitch implements MainsSwitch {
  @Override
  public void ask(Prompt prompt, Consumer<Prompt> hand) {
    hand.accept(prompt);
  }
}

package mainsgap.arming;

import java.util.function.Consumer;

/** A hand on the switch: it is prompted, and the signal shows what it did. */
public final class HandSwitch implements MainsSwitch {
  private final Consumer<Prompt> face;

  /** Creates the switch; its prompts go to {@code face}. */
  public HandSwitch(Consumer<Prompt> face) {
    this.face = face;
  }

  @Override
  public void ask(SwitchMove move) {
    face.accept(new Prompt(move, move.request()));
  }
}

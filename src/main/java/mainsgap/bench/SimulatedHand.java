package mainsgap.bench;

import java.util.function.Consumer;
import mainsgap.arming.MainsSwitch;
import mainsgap.arming.Prompt;
import mainsgap.simulation.SimulatedBench;

/** The simulated hand: hears the prompt and moves the switch of the simulated bench. */
final class SimulatedHand implements MainsSwitch {
  private final SimulatedBench simulation;

  SimulatedHand(SimulatedBench simulation) {
    this.simulation = simulation;
  }

  @Override
  public void ask(Prompt prompt, Consumer<Prompt> hand) {
    hand.accept(prompt);
    switch (prompt.move()) {
      case OPEN -> simulation.openMains();
      case CLOSE -> simulation.closeMains();
    }
  }
}

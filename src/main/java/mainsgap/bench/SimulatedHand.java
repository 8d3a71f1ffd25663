package mainsgap.bench;

import java.util.function.Consumer;
import mainsgap.arming.MainsSwitch;
import mainsgap.arming.Prompt;
import mainsgap.arming.SwitchMove;
import mainsgap.simulation.SimulatedBench;

/** The simulated hand: hears the prompt and moves the switch of the simulated bench. */
final class SimulatedHand implements MainsSwitch {
  private final SimulatedBench simulation;
  private final Consumer<Prompt> face;

  SimulatedHand(SimulatedBench simulation, Consumer<Prompt> face) {
    this.simulation = simulation;
    this.face = face;
  }

  @Override
  public void ask(SwitchMove move) {
    face.accept(new Prompt(move, move.request()));
    switch (move) {
      case OPEN -> simulation.openMains();
      case CLOSE -> simulation.closeMains();
    }
  }
}

package mainsgap.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

@Command(name = "simulate")
final class SimulateCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  SimulateCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    surroundings.progress("to come");
    return 2;
  }
}

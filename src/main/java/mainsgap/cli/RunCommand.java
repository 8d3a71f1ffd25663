package mainsgap.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

@Command(name = "run")
final class RunCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  RunCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    surroundings.progress("to come");
    return 2;
  }
}

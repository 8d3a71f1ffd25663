package mainsgap.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

@Command(name = "recheck")
final class RecheckCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  RecheckCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    surroundings.progress("to come");
    return 2;
  }
}

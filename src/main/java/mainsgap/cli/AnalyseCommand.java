package mainsgap.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

@Command(name = "analyse")
final class AnalyseCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  AnalyseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    surroundings.progress("to come");
    return 2;
  }
}

package mainsgap.cli;

import java.util.concurrent.Callable;
import mainsgap.bench.ProgramVersion;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/** The program without a command. */
@Command(
    name = "mainsgap",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    description =
        "Measures how long a backup supply leaves its load without power when mains is lost."
            + " With no command it opens its window.",
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Try it with nothing connected:",
      "  mainsgap run --simulated --trials 5 --rated 20ms --seed 7",
      "",
      "Exit codes: 0 all measured, and passed where a time is declared; 1 some trial failed, was",
      "inconclusive or refused; 2 wrong use; 3 nothing measured; 4 instrument or link failed;",
      "5 session failed or a seal is broken; 130 stopped by the user."
    })
final class TopCommand implements Callable<Integer> {
  /** How to begin without a window. */
  static final String FIRST_STEPS =
      "start a series with 'run', such as 'mainsgap run --simulated --trials 5 --rated 20ms' (all"
          + " commands: 'mainsgap --help')";

  private final Surroundings surroundings;

  TopCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    surroundings.terminal().complain("no command was given: " + FIRST_STEPS);
    return ExitCode.WRONG_USE.number();
  }

  /** What {@code --version} prints. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"mainsgap " + ProgramVersion.get()};
    }
  }
}

package mainsgap.cli;

import java.nio.file.Path;
import java.time.Duration;
import mainsgap.bench.StateFolder;
import mainsgap.waiting.StopRequest;

/** The terminal face of the program. */
public final class CommandLineFace {
  private static final Duration TIME_TO_BECOME_SAFE = Duration.ofSeconds(15);

  private CommandLineFace() {}

  /** Runs one command on the process's own streams and gives the exit code. */
  public static int run(String[] args) {
    Path stateFolder = StateFolder.of(System.getenv(), System.getProperties());
    // Before the first logger is made: the logging configuration reads it.
    System.setProperty("mainsgap.log.folder", stateFolder.toString());
    StopRequest stop = new StopRequest();
    Terminal terminal = Terminal.ofProcess();
    StopOnExit stopOnExit = StopOnExit.install(stop, terminal, TIME_TO_BECOME_SAFE);
    try {
      return CommandTree.execute(new Surroundings(terminal, stateFolder, stop), args);
    } finally {
      stopOnExit.workHasEnded();
    }
  }

  /** Says why the window did not open, and what goes without one; gives the exit code. */
  public static int sayWhyNoWindow(String why) {
    Terminal.ofProcess().complain("the window cannot open: " + why + "; " + TopCommand.FIRST_STEPS);
    return ExitCode.WRONG_USE.number();
  }
}

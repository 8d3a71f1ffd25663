package mainsgap.cli;

import mainsgap.session.SessionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** All commands, their common manners and their exit codes. */
final class CommandTree {
  private static final Logger LOG = LoggerFactory.getLogger(CommandTree.class);

  private CommandTree() {}

  /** Runs the command that the words name. Never throws. */
  static int execute(Surroundings surroundings, String... args) {
    CommandLine tree = new CommandLine(new TopCommand(surroundings));
    tree.addSubcommand(new RunCommand(surroundings));
    tree.addSubcommand(new AnalyseCommand(surroundings));
    tree.addSubcommand(new RecheckCommand(surroundings));
    tree.addSubcommand(new ReportCommand(surroundings));
    tree.addSubcommand(new InstrumentsCommand(surroundings));
    tree.addSubcommand(new SimulateCommand(surroundings));
    tree.setOut(surroundings.terminal().outWriter());
    tree.setErr(surroundings.terminal().errWriter());
    tree.registerConverter(Double.class, NumberWord::decimal);
    tree.registerConverter(Integer.class, NumberWord::whole);
    tree.setUsageHelpWidth(100);
    tree.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    tree.setParameterExceptionHandler((e, words) -> wrongUse(surroundings.terminal(), e));
    tree.setExecutionExceptionHandler((e, command, parsed) -> faulted(surroundings, e));
    return withResultsOut(surroundings.terminal(), tree.execute(args));
  }

  /** What nobody could read was not delivered, whatever was measured. */
  private static int withResultsOut(Terminal terminal, int exitCode) {
    if (!terminal.out().checkError()) {
      return exitCode;
    }
    terminal.complain(
        "the results could not be written to standard output: make room there, or keep the pipe"
            + " open; what a session logged is in its file");
    return exitCode == ExitCode.DONE.number() ? ExitCode.SESSION_FAILED.number() : exitCode;
  }

  private static int wrongUse(Terminal terminal, ParameterException e) {
    String command = e.getCommandLine().getCommandSpec().qualifiedName();
    terminal.complain(oneLine(e) + " (see '" + command + " --help')");
    return ExitCode.WRONG_USE.number();
  }

  private static int faulted(Surroundings surroundings, Exception e) {
    if (e instanceof CommandFailure failure) {
      LOG.warn("{}", failure.getMessage(), failure);
      surroundings.terminal().complain(oneLine(failure));
      return failure.exitCode().number();
    }
    if (e instanceof SessionException) {
      LOG.warn("{}", e.getMessage(), e);
      surroundings.terminal().complain(oneLine(e));
      return ExitCode.SESSION_FAILED.number();
    }
    LOG.error("a fault of the program itself", e);
    surroundings
        .terminal()
        .complain(
            "a fault of the program itself ("
                + e.getClass().getSimpleName()
                + ": "
                + oneLine(e)
                + "); the log in "
                + surroundings.stateFolder()
                + " tells more");
    return ExitCode.NOTHING_MEASURED.number();
  }

  private static String oneLine(Exception e) {
    return String.valueOf(e.getMessage()).replaceAll("\\s*\\R\\s*", " ");
  }
}

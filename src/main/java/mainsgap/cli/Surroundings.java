package mainsgap.cli;

import java.nio.file.Path;
import java.util.Locale;
import mainsgap.waiting.StopRequest;

/**
 * What a command gets from the machine around it.
 *
 * @param terminal its streams
 * @param stateFolder where the text log is
 * @param stop is requested when the user stops the program
 */
record Surroundings(Terminal terminal, Path stateFolder, StopRequest stop) {

  /** Prints a finished result to standard output. */
  void print(String result) {
    terminal.out().print(result);
    terminal.out().flush();
  }

  /** Prints a line of progress. */
  void progress(String format, Object... values) {
    terminal.err().println(String.format(Locale.ROOT, format, values));
  }
}

package mainsgap.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Whether standard input is a terminal, at which somebody may sit. In doubt it is not. */
final class PersonAtInput {
  private static final Path STANDARD_INPUT = Path.of("/proc/self/fd/0");

  private PersonAtInput() {}

  static boolean isThere() {
    try {
      String input = Files.readSymbolicLink(STANDARD_INPUT).toString();
      return input.startsWith("/dev/pts/") || input.startsWith("/dev/tty");
    } catch (IOException | UnsupportedOperationException notLinux) {
      return isTerminal(System.console());
    }
  }

  /** Up to Java 21 there is a console only at a terminal, later ones have a method that tells. */
  private static boolean isTerminal(@Nullable Console console) {
    if (console == null) {
      return false;
    }
    try {
      return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException upTo21) {
      return true;
    } catch (ReflectiveOperationException e) {
      return false;
    }
  }
}

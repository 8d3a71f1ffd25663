package mainsgap.cli;

/** A command ends without its result; the message is a sentence for people. */
final class CommandFailure extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final ExitCode exitCode;

  CommandFailure(ExitCode exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  CommandFailure(ExitCode exitCode, String message, Throwable cause) {
    super(message, cause);
    this.exitCode = exitCode;
  }

  ExitCode exitCode() {
    return exitCode;
  }
}

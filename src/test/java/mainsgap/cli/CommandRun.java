package mainsgap.cli;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import mainsgap.waiting.StopRequest;

/** One command as a user runs it: its exit code and what it printed on which stream. */
record CommandRun(int exit, String out, String err) {

  /** Runs the command to its end with an empty standard input. */
  static CommandRun of(String... words) {
    return until(new StopRequest(), words);
  }

  /** Runs the command until it ends or {@code stop} is requested. */
  static CommandRun until(StopRequest stop, String... words) {
    return with(new ByteArrayOutputStream(), stop, words);
  }

  /** Runs the command and stops it as soon as standard error shows {@code mark}. */
  static CommandRun stoppedAt(String mark, String... words) {
    StopRequest stop = new StopRequest();
    return with(new StoppingStream(mark, stop), stop, words);
  }

  private static CommandRun with(ByteArrayOutputStream err, StopRequest stop, String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int exit = CommandTree.execute(surroundings(out, err, stop), words);
    return new CommandRun(
        exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Surroundings that write to the two streams. */
  static Surroundings surroundings(
      ByteArrayOutputStream out, ByteArrayOutputStream err, StopRequest stop) {
    return new Surroundings(
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            InputStream.nullInputStream(),
            StandardCharsets.UTF_8,
            false),
        Path.of("target", "state"),
        stop);
  }

  private static final class StoppingStream extends ByteArrayOutputStream {
    private final String mark;
    private final StopRequest stop;

    StoppingStream(String mark, StopRequest stop) {
      this.mark = mark;
      this.stop = stop;
    }

    @Override
    public synchronized void write(byte[] bytes, int offset, int length) {
      super.write(bytes, offset, length);
      if (toString(StandardCharsets.UTF_8).contains(mark)) {
        stop.request();
      }
    }
  }
}

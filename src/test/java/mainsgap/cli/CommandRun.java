package mainsgap.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import mainsgap.waiting.StopRequest;

/** One command as a user runs it: its exit code and what it printed on which stream. */
record CommandRun(int exit, String out, String err) {
  private static final InputStream NOTHING = InputStream.nullInputStream();

  /** Runs the command to its end with an empty standard input. */
  static CommandRun of(String... words) {
    return until(new StopRequest(), words);
  }

  /** Runs the command until it ends or {@code stop} is requested. */
  static CommandRun until(StopRequest stop, String... words) {
    return with(new ByteArrayOutputStream(), NOTHING, false, stop, words);
  }

  /** Runs the command; a person presses Enter once, as soon as standard error shows a mark. */
  static CommandRun pressingEnterAt(String mark, String... words) {
    try (PipedOutputStream keyboard = new PipedOutputStream();
        PipedInputStream in = new PipedInputStream(keyboard)) {
      return with(
          new MarkedStream(mark, () -> pressEnter(keyboard)), in, true, new StopRequest(), words);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void pressEnter(PipedOutputStream keyboard) {
    try {
      keyboard.write('\n');
      keyboard.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs the command and stops it as soon as standard error shows {@code mark}. */
  static CommandRun stoppedAt(String mark, String... words) {
    StopRequest stop = new StopRequest();
    return with(new MarkedStream(mark, stop::request), NOTHING, false, stop, words);
  }

  private static CommandRun with(
      ByteArrayOutputStream err,
      InputStream in,
      boolean personAtInput,
      StopRequest stop,
      String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int exit = CommandTree.execute(surroundings(out, err, in, personAtInput, stop), words);
    return new CommandRun(
        exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Surroundings that write to the two streams. */
  static Surroundings surroundings(
      ByteArrayOutputStream out, ByteArrayOutputStream err, StopRequest stop) {
    return surroundings(out, err, NOTHING, false, stop);
  }

  private static Surroundings surroundings(
      ByteArrayOutputStream out,
      ByteArrayOutputStream err,
      InputStream in,
      boolean personAtInput,
      StopRequest stop) {
    return new Surroundings(
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            in,
            StandardCharsets.UTF_8,
            personAtInput),
        Path.of("target", "state"),
        stop);
  }

  /** Does something once, as soon as what was written holds a mark. */
  private static final class MarkedStream extends ByteArrayOutputStream {
    private final String mark;
    private final Runnable action;
    private boolean isDone;

    MarkedStream(String mark, Runnable action) {
      this.mark = mark;
      this.action = action;
    }

    @Override
    public synchronized void write(byte[] bytes, int offset, int length) {
      super.write(bytes, offset, length);
      if (!isDone && toString(StandardCharsets.UTF_8).contains(mark)) {
        isDone = true;
        action.run();
      }
    }
  }
}

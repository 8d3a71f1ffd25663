package mainsgap.simulation;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;

/** The talk with one client over a stream: messages end with a newline, and so do answers. */
final class ServedClient {
  private static final int LONGEST_MESSAGE = 64 * 1024;
  private static final int CHUNK = 64 * 1024;

  private final Instrument instrument;
  private final AnswerWriter answers;
  private final InputStream in;
  private final OutputStream out;

  ServedClient(Instrument instrument, FaultSwitch faults, InputStream in, OutputStream out) {
    this.instrument = instrument;
    this.answers = new AnswerWriter(faults);
    this.in = new BufferedInputStream(in);
    this.out = new BufferedOutputStream(out, CHUNK);
  }

  /** Answers until the client goes, the bench closes, or a fault closes the connection. */
  void run() throws IOException {
    try {
      boolean open = true;
      while (open) {
        String message = nextMessage();
        open = message != null && answer(instrument.handle(message));
      }
    } catch (StoppedException e) {
      // the bench closes, and the connection with it
      Thread.currentThread().interrupt();
    }
  }

  /** The next message; null once the client is gone. Of one too long, nothing is kept. */
  private @Nullable String nextMessage() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    boolean tooLong = false;
    for (int b = in.read(); b != '\n'; b = in.read()) {
      if (b < 0) {
        return null;
      }
      if (line.size() < LONGEST_MESSAGE) {
        line.write(b);
      } else {
        tooLong = true;
      }
    }
    if (tooLong) {
      instrument.overrun();
      return "";
    }
    return line.toString(StandardCharsets.US_ASCII);
  }

  /** Sends the answers; whether the connection stays open. */
  private boolean answer(List<Reply> replies) throws IOException {
    AnswerWriter.Sent sent = answers.write(replies, out);
    out.flush();
    return sent != AnswerWriter.Sent.BROKEN_OFF;
  }
}

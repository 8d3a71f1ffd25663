package mainsgap.simulation;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;

/** The talk with one client over a stream: messages end with a newline, and so do answers. */
final class ServedClient {
  private static final int LONGEST_MESSAGE = 64 * 1024;
  private static final int CHUNK = 64 * 1024;

  private final Instrument instrument;
  private final FaultSwitch faults;
  private final InputStream in;
  private final OutputStream out;
  private boolean sentBlock;

  ServedClient(Instrument instrument, FaultSwitch faults, InputStream in, OutputStream out) {
    this.instrument = instrument;
    this.faults = faults;
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
    if (replies.isEmpty() || faults.now() == ScopeFault.SILENT) {
      return true;
    }
    for (int i = 0; i < replies.size(); i++) {
      if (i > 0) {
        out.write(';');
      }
      Reply reply = replies.get(i);
      if (!reply.isBlock()) {
        out.write(reply.bytes());
      } else if (!sendBlock(reply)) {
        out.flush();
        return faults.now() != ScopeFault.CLOSES_IN_MID_BLOCK;
      }
    }
    boolean block = replies.get(replies.size() - 1).isBlock();
    if (!block || !faults.has(ScopeQuirk.NO_NEW_LINE_BEHIND_BLOCK)) {
      out.write('\n');
    }
    out.flush();
    return true;
  }

  /** Sends a block; whether it went out to its end. */
  private boolean sendBlock(Reply reply) throws IOException {
    ScopeFault fault = faults.now();
    byte[] bytes = reply.bytes();
    boolean half =
        fault == ScopeFault.SHORT_BLOCK || (faults.has(ScopeQuirk.SHORT_FIRST_BLOCK) && !sentBlock);
    sentBlock = true;
    byte[] sent = half ? halfOf(bytes) : bytes;
    String before = faults.has(ScopeQuirk.TEXT_BEFORE_BLOCK) ? "DATA " : reply.before();
    out.write(before.getBytes(StandardCharsets.US_ASCII));
    String count = Integer.toString(sent.length);
    out.write(("#" + count.length() + count).getBytes(StandardCharsets.US_ASCII));
    boolean whole =
        fault != ScopeFault.CLOSES_IN_MID_BLOCK && fault != ScopeFault.STALLS_IN_MID_BLOCK;
    out.write(sent, 0, whole ? sent.length : sent.length / 2);
    if (whole && faults.has(ScopeQuirk.EXTRA_BYTE_BEHIND_BLOCK)) {
      out.write(0);
    }
    return whole;
  }

  /** Half of a block, ending where a sample of up to four bytes ends. */
  private static byte[] halfOf(byte[] bytes) {
    return Arrays.copyOf(bytes, bytes.length / 8 * 4);
  }
}

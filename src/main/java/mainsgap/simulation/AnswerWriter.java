package mainsgap.simulation;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Writes the answers to a client as response messages, with the faults of the scope. */
final class AnswerWriter {
  private final FaultSwitch faults;
  private boolean sentBlock;

  AnswerWriter(FaultSwitch faults) {
    this.faults = faults;
  }

  /** How far a response message got. */
  enum Sent {
    /** There is none, or the scope is silent. */
    NOTHING,
    /** To its end. */
    WHOLE,
    /** Into the middle of a block, and no further. */
    STALLED,
    /** Into the middle of a block; now the connection is to be closed. */
    BROKEN_OFF
  }

  /** Writes, and does not flush. */
  Sent write(List<Reply> replies, OutputStream out) throws IOException {
    if (replies.isEmpty() || faults.now() == ScopeFault.SILENT) {
      return Sent.NOTHING;
    }
    for (int i = 0; i < replies.size(); i++) {
      if (i > 0) {
        out.write(';');
      }
      Reply reply = replies.get(i);
      if (!reply.isBlock()) {
        out.write(reply.bytes());
      } else if (!writeBlock(reply, out)) {
        boolean closes = faults.now() == ScopeFault.CLOSES_IN_MID_BLOCK;
        return closes ? Sent.BROKEN_OFF : Sent.STALLED;
      }
    }
    boolean block = replies.get(replies.size() - 1).isBlock();
    if (!block || !faults.has(ScopeQuirk.NO_NEW_LINE_BEHIND_BLOCK)) {
      out.write('\n');
    }
    return Sent.WHOLE;
  }

  /** Writes a block; whether it went out to its end. */
  private boolean writeBlock(Reply reply, OutputStream out) throws IOException {
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
    int length = whole ? sent.length : sent.length / 2;
    if (fault == ScopeFault.SLOW) {
      writeSlowly(sent, length, out);
    } else {
      out.write(sent, 0, length);
    }
    if (whole && faults.has(ScopeQuirk.EXTRA_BYTE_BEHIND_BLOCK)) {
      out.write(0);
    }
    return whole;
  }

  private static void writeSlowly(byte[] bytes, int length, OutputStream out) throws IOException {
    for (int i = 0; i < length; i++) {
      out.write(bytes[i]);
      out.flush();
    }
  }

  /** Half of a block, ending where a sample of up to four bytes ends. */
  private static byte[] halfOf(byte[] bytes) {
    return Arrays.copyOf(bytes, bytes.length / 8 * 4);
  }
}

package mainsgap.scpi;

import java.nio.ByteBuffer;
import java.time.Duration;
import mainsgap.link.Link;
import mainsgap.link.LinkTimeoutException;
import mainsgap.link.Received;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The bytes of one reply. It waits for the next of them until the caller's deadline for the whole,
 * and never longer in one go than the longest silence allowed.
 */
final class ReplyStream {
  /** Stands behind the last byte, where the link marks the end of a message. */
  static final int END = -1;

  /** The machine keeps a buffer as long as the longest read: more than this is no faster. */
  private static final int MOST_AT_ONCE = 256 * 1024;

  private static final Logger LOG = LoggerFactory.getLogger(ReplyStream.class);

  private final Link link;
  private final Duration longestSilence;
  private final Clock clock;
  private final ByteBuffer buffer = ByteBuffer.allocate(16 * 1024).limit(0);
  private boolean messageEnded;
  private int received;
  private int expected;

  ReplyStream(Link link, Duration longestSilence, Clock clock) {
    this.link = link;
    this.longestSilence = longestSilence;
    this.clock = clock;
  }

  /** Forgets what an earlier reply left over: the next byte belongs to a new one. */
  void begin() {
    if (buffer.hasRemaining()) {
      LOG.debug("{}: {} bytes that nobody asked for", link.resource(), buffer.remaining());
    }
    buffer.limit(0);
    messageEnded = false;
    received = 0;
    expected = 0;
  }

  /** The next byte, 0 to 255, or {@link #END}. */
  int next(Deadline whole) {
    while (!buffer.hasRemaining()) {
      if (messageEnded) {
        return END;
      }
      receive(whole);
    }
    received++;
    return buffer.get() & 0xFF;
  }

  /** Fills {@code data}, or throws where the message ends first. */
  void fill(byte[] data, Deadline whole) {
    received = 0;
    expected = data.length;
    while (received < expected) {
      if (buffer.hasRemaining()) {
        int bytes = Math.min(buffer.remaining(), expected - received);
        buffer.get(data, received, bytes);
        received += bytes;
      } else if (messageEnded) {
        throw new ScpiException("the block ended " + progress());
      } else {
        int most = Math.min(MOST_AT_ONCE, expected - received);
        received += receive(ByteBuffer.wrap(data, received, most), whole);
      }
    }
  }

  /** How far the reply has come, for a sentence. */
  String progress() {
    if (expected > 0) {
      return "after " + received + " of " + expected + " bytes of data";
    }
    return received == 0 ? "before any byte" : "after " + received + " bytes";
  }

  private void receive(Deadline whole) {
    buffer.clear();
    try {
      receive(buffer, whole);
    } finally {
      buffer.flip();
    }
  }

  private int receive(ByteBuffer into, Deadline whole) {
    if (whole.hasPassed()) {
      throw new LinkTimeoutException(link.resource() + " is too slow");
    }
    Deadline silence = Deadline.after(longestSilence, clock);
    boolean wholeIsNearer = whole.remaining().compareTo(silence.remaining()) < 0;
    Received news = link.read(into, wholeIsNearer ? whole : silence);
    messageEnded = news.messageEnded();
    return news.bytes();
  }
}

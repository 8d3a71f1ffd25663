package mainsgap.link;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.OptionalInt;
import java.util.function.Supplier;
import mainsgap.waiting.Deadline;

/** A link that writes down what passes over it, message by message. */
final class RecordedLink implements Link {
  /** A longer reply is written in pieces. */
  private static final int PIECE_BYTES = 57 * 1024;

  private final Link link;
  private final ConversationFile file;
  private final ByteArrayOutputStream received = new ByteArrayOutputStream();
  private Duration receivedAt = Duration.ZERO;
  private volatile boolean closed;

  RecordedLink(Link link, ConversationFile file) {
    this.link = link;
    this.file = file;
    entry("open", link.resource() + (link.marksMessageEnd() ? ", ends marked" : ""));
  }

  @Override
  public ResourceName resource() {
    return link.resource();
  }

  @Override
  public void write(byte[] message, Deadline deadline) {
    flush();
    file.bytes(file.elapsed(), ">", message);
    telling(
        () -> {
          link.write(message, deadline);
          return message.length;
        });
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    int from = into.position();
    Received came = telling(() -> link.read(into, deadline));
    keep(into, from, came.bytes());
    if (came.messageEnded()) {
      entry("end", "");
    }
    return came;
  }

  @Override
  public boolean marksMessageEnd() {
    return link.marksMessageEnd();
  }

  @Override
  public int slowestBytesPerSecond() {
    return link.slowestBytesPerSecond();
  }

  @Override
  public OptionalInt statusByte(Deadline deadline) {
    OptionalInt status = telling(() -> link.statusByte(deadline));
    entry("status", status.isPresent() ? Integer.toString(status.getAsInt()) : "none");
    return status;
  }

  @Override
  public void clear(Deadline deadline) {
    entry("clear", "");
    telling(
        () -> {
          link.clear(deadline);
          return true;
        });
  }

  @Override
  public void close() {
    if (!closed) {
      closed = true;
      entry("close", "");
    }
    link.close();
  }

  /** What failed is written down, and fails as before. */
  private <T> T telling(Supplier<T> step) {
    try {
      return step.get();
    } catch (LinkTimeoutException e) {
      entry("time-out", "");
      throw e;
    } catch (LinkException e) {
      entry("lost", ConversationText.escaped(String.valueOf(e.getMessage())));
      throw e;
    }
  }

  private synchronized void keep(ByteBuffer into, int from, int bytes) {
    if (received.size() == 0) {
      receivedAt = file.elapsed();
    }
    for (int i = 0; i < bytes; i++) {
      received.write(into.get(from + i));
      if (received.size() == PIECE_BYTES) {
        flush();
        receivedAt = file.elapsed();
      }
    }
  }

  private void entry(String mark, String rest) {
    flush();
    file.entry(file.elapsed(), mark, rest);
  }

  private synchronized void flush() {
    if (received.size() > 0) {
      file.bytes(receivedAt, "<", received.toByteArray());
      received.reset();
    }
  }
}

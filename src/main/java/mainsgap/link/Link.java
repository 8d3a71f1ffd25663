package mainsgap.link;

import java.nio.ByteBuffer;
import java.util.OptionalInt;
import mainsgap.waiting.Deadline;

/**
 * Bytes to and from one instrument. One thread owns a link; only {@link #close()} may come from
 * another, and ends a wait of the owner with {@link LinkClosedException}.
 */
public interface Link extends AutoCloseable {

  /** Where the link leads. */
  ResourceName resource();

  /**
   * Sends a whole message, its terminator included. On a link that marks the end of messages, what
   * was not read of the reply before is given up, and never taken for a part of the next.
   */
  void write(byte[] message, Deadline deadline);

  /** Waits for at least one byte or the end of the message, and takes what has come. */
  Received read(ByteBuffer into, Deadline deadline);

  /** Whether {@link Received#messageEnded()} tells the end of a message. */
  boolean marksMessageEnd();

  /**
   * What the link carries at least while all is well; a transfer that is slower may be given up. A
   * network carries far more; an instrument with a lot of work in between may not.
   */
  default int slowestBytesPerSecond() {
    return 10_000;
  }

  /**
   * The status byte of IEEE 488.2 by the link's own message (serial poll), 0 to 255; it disturbs no
   * query under way and clears the request for service (bit 6) alone. Empty where the link has no
   * such message, as a raw socket: ask {@code *STB?} there.
   */
  OptionalInt statusByte(Deadline deadline);

  /**
   * Throws away what was sent and not read, on both sides (device clear). A raw socket has no such
   * message: it is closed and opened again.
   */
  void clear(Deadline deadline);

  /** Never throws; a second call does nothing. */
  @Override
  void close();
}

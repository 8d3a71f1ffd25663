package mainsgap.link;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * HiSLIP messages on one of the two connections: where they begin and end, not what they mean. A
 * payload is handed on as it comes, and nothing is allocated by the length that it claims. A read
 * that timed out can go on where it was; a message half sent can't. Owned by the link's thread.
 */
final class HislipChannel {
  private static final Logger LOG = LoggerFactory.getLogger(HislipChannel.class);

  /** Clients and servers take so much of a text (IVI-6.1 2.7). */
  private static final int LONGEST_TEXT = 256;

  /** Up to here a payload is copied behind its header, so that both leave in one segment. */
  private static final int SHORT_PAYLOAD = 8 * 1024;

  private final ResourceName resource;
  private final TcpStream stream;
  private final ByteBuffer header = ByteBuffer.allocate(HislipHeader.BYTES);
  private final ByteBuffer outgoing = ByteBuffer.allocate(HislipHeader.BYTES + SHORT_PAYLOAD);
  private final ByteBuffer bin = ByteBuffer.allocate(64 * 1024);
  private long payloadLeft;
  private boolean halfSent;

  HislipChannel(ResourceName resource, TcpStream stream) {
    this.resource = resource;
    this.stream = stream;
  }

  /** Sends a message with the rest of {@code payload}, which says its length. */
  void send(HislipType type, int control, int parameter, ByteBuffer payload, Deadline deadline) {
    send(HislipHeader.of(type, control, parameter, payload.remaining()), payload, deadline);
  }

  /** Sends a message without a payload. */
  void send(HislipType type, int control, int parameter, Deadline deadline) {
    send(type, control, parameter, ByteBuffer.allocate(0), deadline);
  }

  /**
   * Waits for the next message, past what is left of the payload before. One of an unknown type is
   * refused to the peer and passed over.
   */
  HislipHeader next(Deadline deadline) {
    while (true) {
      skipPayload(deadline);
      while (header.hasRemaining()) {
        stream.read(header, deadline);
      }
      HislipHeader next = begin();
      if (next.type().isPresent()) {
        return next;
      }
      refuse(next, deadline);
    }
  }

  /** Whether the payload of the last message is not yet read to its end. */
  boolean hasPayload() {
    return payloadLeft != 0;
  }

  /** Takes at least one byte of the payload, where there is one and it has room. */
  int readPayload(ByteBuffer into, Deadline deadline) {
    int limit = into.limit();
    try {
      into.limit(into.position() + (int) atMost(into.remaining()));
      int bytes = into.hasRemaining() ? stream.read(into, deadline) : 0;
      payloadLeft -= bytes;
      return bytes;
    } finally {
      into.limit(limit);
    }
  }

  /** The payload as the text of an error; what is too long, late or not printable is left out. */
  String text(Deadline deadline) {
    ByteBuffer text = ByteBuffer.allocate((int) atMost(LONGEST_TEXT));
    try {
      while (text.hasRemaining()) {
        readPayload(text, deadline);
      }
    } catch (LinkException e) {
      LOG.debug("{}: the text of an error broke off", resource, e);
    }
    String whole = new String(text.array(), 0, text.position(), StandardCharsets.US_ASCII);
    return whole.replaceAll("[^ -~]", "");
  }

  /** Passes over what is left of a payload. */
  void skipPayload(Deadline deadline) {
    while (payloadLeft != 0) {
      readPayload(bin.clear(), deadline);
    }
  }

  /** Passes over whole and half messages that have come, without waiting for more. */
  void discardWhatCame() {
    int bytes;
    do {
      if (payloadLeft == 0) {
        bytes = stream.readWhatCame(header);
        if (!header.hasRemaining()) {
          begin();
        }
      } else {
        bin.clear().limit((int) atMost(bin.capacity()));
        bytes = stream.readWhatCame(bin);
        payloadLeft -= bytes;
      }
    } while (bytes > 0);
  }

  /** Waits for a byte; false where the deadline passed first. */
  boolean awaitBytes(Deadline deadline) {
    return stream.awaitBytes(deadline);
  }

  /** Whether the other side can no longer tell where a message of this side ends. */
  boolean isHalfSent() {
    return halfSent;
  }

  void drop() {
    stream.drop();
  }

  void beginClose() {
    stream.beginClose();
  }

  void close() {
    stream.close();
  }

  private void send(HislipHeader first, ByteBuffer payload, Deadline deadline) {
    halfSent = true;
    first.putTo(outgoing.clear());
    if (payload.remaining() <= SHORT_PAYLOAD) {
      outgoing.put(payload);
    }
    stream.write(outgoing.flip(), deadline);
    if (payload.hasRemaining()) {
      stream.write(payload, deadline);
    }
    halfSent = false;
  }

  private HislipHeader begin() {
    try {
      HislipHeader begun = HislipHeader.from(header.flip());
      payloadLeft = begun.payloadBytes();
      return begun;
    } catch (LinkException e) {
      LinkClosedException told =
          new LinkClosedException(
              resource
                  + ": "
                  + e.getMessage()
                  + ": check that the port is the one for HiSLIP, and connect again",
              e);
      tell(HislipFault.POOR_HEADER, Deadline.after(Duration.ZERO, Clock.system()));
      stream.drop();
      throw told;
    } finally {
      header.clear();
    }
  }

  private void refuse(HislipHeader unknown, Deadline deadline) {
    LOG.warn("{}: a message of the unknown type {} is ignored", resource, unknown.typeCode());
    boolean vendors = unknown.typeCode() >= HislipType.FIRST_OF_VENDORS;
    tell(vendors ? HislipFault.UNKNOWN_VENDOR_MESSAGE : HislipFault.UNKNOWN_TYPE, deadline);
  }

  private void tell(HislipFault fault, Deadline deadline) {
    try {
      send(fault.header(0), ByteBuffer.allocate(0), deadline);
    } catch (LinkException e) {
      LOG.debug("{}: could not be told of {}", resource, fault, e);
    }
  }

  /** The smaller of {@code bytes} and what is left of the payload, a number without sign. */
  private long atMost(int bytes) {
    return Long.compareUnsigned(payloadLeft, bytes) < 0 ? payloadLeft : bytes;
  }
}

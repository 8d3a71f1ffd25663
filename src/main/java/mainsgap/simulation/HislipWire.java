package mainsgap.simulation;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import mainsgap.link.HislipFault;
import mainsgap.link.HislipHeader;
import mainsgap.link.HislipType;
import mainsgap.link.LinkException;

/** HiSLIP messages on one connection of the server. One thread reads; all may send. */
final class HislipWire {
  /** What of a payload is kept; the rest is passed over. */
  static final int LONGEST_PAYLOAD = 64 * 1024;

  private final InputStream in;
  private final OutputStream out;

  HislipWire(InputStream in, OutputStream out) {
    this.in = in;
    this.out = out;
  }

  /**
   * One message that came.
   *
   * @param payload what was kept of it
   * @param isWhole whether that is all
   */
  @SuppressWarnings("ArrayRecordComponent") // carried from the wire to the instrument
  record Message(HislipHeader header, byte[] payload, boolean isWhole) {}

  /** The next message of a known type; one of an unknown type is refused. */
  Message next() throws IOException {
    while (true) {
      Message message = any();
      if (message.header().type().isPresent()) {
        return message;
      }
      tell(HislipFault.UNKNOWN_TYPE);
    }
  }

  /** Whether something has come that was not read. */
  boolean hasMore() throws IOException {
    return in.available() > 0;
  }

  void send(HislipType type, int control, int parameter) throws IOException {
    send(HislipHeader.of(type, control, parameter, 0), new byte[0], 0);
  }

  void tell(HislipFault fault) throws IOException {
    send(fault.header(0), new byte[0], 0);
  }

  /** Sends a message with the first bytes of {@code payload}, as many as its header says. */
  synchronized void send(HislipHeader header, byte[] payload, int length) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(HislipHeader.BYTES + length);
    header.putTo(bytes);
    out.write(bytes.put(payload, 0, length).array());
  }

  private Message any() throws IOException {
    byte[] bytes = in.readNBytes(HislipHeader.BYTES);
    if (bytes.length < HislipHeader.BYTES) {
      throw new EOFException("the client is gone");
    }
    HislipHeader header = headerOf(bytes);
    long claimed = header.payloadBytes();
    boolean whole = Long.compareUnsigned(claimed, LONGEST_PAYLOAD) <= 0;
    byte[] payload = in.readNBytes(whole ? (int) claimed : LONGEST_PAYLOAD);
    if (!whole) {
      in.skipNBytes(claimed < 0 ? Long.MAX_VALUE : claimed - LONGEST_PAYLOAD);
    }
    return new Message(header, payload, whole);
  }

  private HislipHeader headerOf(byte[] bytes) throws IOException {
    try {
      return HislipHeader.from(ByteBuffer.wrap(bytes));
    } catch (LinkException e) {
      tell(HislipFault.POOR_HEADER);
      throw new IOException(e.getMessage(), e);
    }
  }
}

package mainsgap.link;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * What goes out over the bulk endpoint of a USBTMC interface: a header of twelve bytes, in little
 * endian order, and the data filled up with zeros to a multiple of four.
 */
final class UsbtmcFrames {
  /** The header before all data, out and in. */
  static final int HEADER_BYTES = 12;

  /** DEV_DEP_MSG_OUT: a message to the instrument, or a part of one. */
  static final int MESSAGE_OUT = 1;

  /** REQUEST_DEV_DEP_MSG_IN going out, DEV_DEP_MSG_IN coming in. */
  static final int MESSAGE_IN = 2;

  /** Bit 0 of the attributes, out and in: the message ends with this transfer. */
  static final int END_OF_MESSAGE = 1;

  /** Bit 1 of the attributes: out, the reply may end at a character; in, it did. */
  static final int TERM_CHAR = 2;

  private static final int LAST_TAG = 255;
  private static final int ALIGNMENT = 4;

  private UsbtmcFrames() {}

  /** The tag of the transfer after this one: 1 to 255, never 0. */
  static int tagAfter(int tag) {
    return tag % LAST_TAG + 1;
  }

  /** The bytes with the zeros that fill them up to a multiple of four. */
  static int padded(int bytes) {
    return (bytes + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
  }

  /**
   * A transfer with {@code count} bytes of a message, from {@code from} on.
   *
   * @param ends whether the message ends with them
   */
  static byte[] message(int tag, byte[] message, int from, int count, boolean ends) {
    return frame(MESSAGE_OUT, tag, padded(count))
        .putInt(count)
        .put((byte) (ends ? END_OF_MESSAGE : 0))
        .put(HEADER_BYTES, message, from, count)
        .array();
  }

  /** Asks for at most {@code mostBytes} of the reply. */
  static byte[] request(int tag, int mostBytes) {
    return frame(MESSAGE_IN, tag, 0).putInt(mostBytes).array();
  }

  /** Asks for the reply up to a character; only for instruments that have the capability. */
  static byte[] requestUpTo(int tag, int mostBytes, byte termChar) {
    return frame(MESSAGE_IN, tag, 0).putInt(mostBytes).put((byte) TERM_CHAR).put(termChar).array();
  }

  private static ByteBuffer frame(int kind, int tag, int dataBytes) {
    return ByteBuffer.allocate(HEADER_BYTES + dataBytes)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put((byte) kind)
        .put((byte) tag)
        .put((byte) ~tag)
        .put((byte) 0);
  }
}

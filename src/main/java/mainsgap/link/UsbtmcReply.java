package mainsgap.link;

import static mainsgap.link.UsbtmcFrames.HEADER_BYTES;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Locale;

/**
 * One transfer from the instrument (DEV_DEP_MSG_IN), put together from the pieces in which it
 * comes. Only the first begins with a header. It is whole as soon as what the header claims is
 * there: some instruments leave out the short packet that should end it.
 */
final class UsbtmcReply {
  private final int tag;
  private final byte[] into;
  private final byte[] header = new byte[HEADER_BYTES];
  private int headerBytes;
  private int claimedBytes;
  private int bytes;
  private int paddingBytes;

  /**
   * Expects the answer to a request.
   *
   * @param tag of the request
   * @param into as long as the request asked for; filled from the start
   */
  UsbtmcReply(int tag, byte[] into) {
    this.tag = tag;
    this.into = into;
  }

  /**
   * Takes the next piece.
   *
   * @throws UsbFault where it does not answer the request or holds more than was asked for
   */
  void take(byte[] piece, int pieceBytes) throws UsbFault {
    int at = Math.min(HEADER_BYTES - headerBytes, pieceBytes);
    System.arraycopy(piece, 0, header, headerBytes, at);
    boolean headerCameNow = headerBytes < HEADER_BYTES && headerBytes + at == HEADER_BYTES;
    headerBytes += at;
    if (headerCameNow) {
      claimedBytes = claimed();
    }
    int data = Math.min(claimedBytes - bytes, pieceBytes - at);
    System.arraycopy(piece, at, into, bytes, data);
    bytes += data;
    paddingBytes += pieceBytes - at - data;
    if (paddingBytes > UsbtmcFrames.padded(claimedBytes) - claimedBytes) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "it sent "
              + paddingBytes
              + " bytes behind the "
              + claimedBytes
              + " that its header claims");
    }
  }

  /** Whether nothing has come yet. */
  boolean isEmpty() {
    return headerBytes == 0;
  }

  /** Whether all is there that the header claims. */
  boolean isWhole() {
    return headerBytes == HEADER_BYTES && bytes == claimedBytes;
  }

  /** How many bytes are still to come, padding included, as far as is known. */
  int owedBytes() {
    return headerBytes < HEADER_BYTES
        ? HEADER_BYTES - headerBytes
        : UsbtmcFrames.padded(claimedBytes) - bytes;
  }

  /** The bytes of data so far. */
  int bytes() {
    return bytes;
  }

  /** Whether the instrument marked the end of its message behind this transfer. */
  boolean endsMessage() {
    return (header[8] & UsbtmcFrames.END_OF_MESSAGE) != 0;
  }

  /** How far it came, for a sentence. */
  String progress() {
    return headerBytes < HEADER_BYTES
        ? "a header of " + headerBytes + " bytes where 12 should be"
        : bytes + " of the " + claimedBytes + " bytes that its header claims";
  }

  private int claimed() throws UsbFault {
    ByteBuffer fields = ByteBuffer.wrap(header).order(ByteOrder.LITTLE_ENDIAN);
    int kind = fields.get(0) & 0xFF;
    int answered = fields.get(1) & 0xFF;
    int inverse = fields.get(2) & 0xFF;
    if (kind != UsbtmcFrames.MESSAGE_IN) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "it answered with a message of the kind " + kind + " where 2 should be: " + hex());
    }
    if (answered + inverse != 0xFF) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "the tag " + answered + " of its answer and its inverse do not fit: " + hex());
    }
    if (answered != tag) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "it answered the request " + answered + " where " + tag + " was asked: " + hex());
    }
    long claims = Integer.toUnsignedLong(fields.getInt(4));
    if (claims > into.length) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "its answer claims "
              + claims
              + " bytes where at most "
              + into.length
              + " were asked for");
    }
    return (int) claims;
  }

  private String hex() {
    StringBuilder text = new StringBuilder("header");
    for (byte b : header) {
      text.append(String.format(Locale.ROOT, " %02X", b));
    }
    return text.toString();
  }
}

package mainsgap.link;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * The 16 bytes before each HiSLIP message (IVI-6.1 table 2), all fields big-endian.
 *
 * @param typeCode 0 to 255; what it means is {@link #type()}
 * @param control 0 to 255
 * @param parameter all 32 bits
 * @param payloadBytes all 64 bits, without sign: never allocate by it
 */
public record HislipHeader(int typeCode, int control, int parameter, long payloadBytes) {
  /** The length of a header. */
  public static final int BYTES = 16;

  private static final short PROLOGUE = 0x4853; // "HS"

  /** A header of a known type. */
  public static HislipHeader of(HislipType type, int control, int parameter, long payloadBytes) {
    return new HislipHeader(type.code(), control, parameter, payloadBytes);
  }

  /**
   * Reads a header.
   *
   * @param from holds {@link #BYTES} bytes at least
   * @throws LinkException where it does not begin as a header does
   */
  public static HislipHeader from(ByteBuffer from) {
    short prologue = from.getShort();
    if (prologue != PROLOGUE) {
      throw new LinkException(
          String.format("a message begins with %04X where HiSLIP has 4853", prologue & 0xFFFF));
    }
    return new HislipHeader(
        Byte.toUnsignedInt(from.get()),
        Byte.toUnsignedInt(from.get()),
        from.getInt(),
        from.getLong());
  }

  /** Writes the header. */
  public void putTo(ByteBuffer to) {
    to.putShort(PROLOGUE).put((byte) typeCode).put((byte) control);
    to.putInt(parameter).putLong(payloadBytes);
  }

  /** What the message is; empty where the type is unknown. */
  public Optional<HislipType> type() {
    return HislipType.of(typeCode);
  }

  /** Whether the message is of {@code type}. */
  public boolean is(HislipType type) {
    return typeCode == type.code();
  }

  /** A bit of the control code. */
  public boolean controlBit(int bit) {
    return (control >> bit & 1) != 0;
  }
}

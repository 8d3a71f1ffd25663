package mainsgap.signal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** How the codes of a waveform stand in the data block that an instrument sends. */
public enum CodeFormat {
  /** One byte, 0 to 255. */
  UNSIGNED_8(1, (block, at) -> block[at] & 0xFF),
  /** One byte, -128 to 127. */
  SIGNED_8(1, (block, at) -> block[at]),
  /** Two bytes, most significant first, 0 to 65535. */
  UNSIGNED_16_MSB_FIRST(2, (block, at) -> (short) Views.SHORT_MSB.get(block, at) & 0xFFFF),
  /** Two bytes, least significant first, 0 to 65535. */
  UNSIGNED_16_LSB_FIRST(2, (block, at) -> (short) Views.SHORT_LSB.get(block, at) & 0xFFFF),
  /** Two bytes, most significant first, -32768 to 32767. */
  SIGNED_16_MSB_FIRST(2, (block, at) -> (short) Views.SHORT_MSB.get(block, at)),
  /** Two bytes, least significant first, -32768 to 32767. */
  SIGNED_16_LSB_FIRST(2, (block, at) -> (short) Views.SHORT_LSB.get(block, at)),
  /** IEEE 754 single precision, most significant byte first. */
  REAL_32_MSB_FIRST(4, (block, at) -> (float) Views.FLOAT_MSB.get(block, at)),
  /** IEEE 754 single precision, least significant byte first. */
  REAL_32_LSB_FIRST(4, (block, at) -> (float) Views.FLOAT_LSB.get(block, at)),
  /** IEEE 754 double precision, least significant byte first: captures read from files. */
  REAL_64_LSB_FIRST(8, (block, at) -> (double) Views.DOUBLE_LSB.get(block, at));

  @SuppressWarnings("ImmutableEnumChecker") // the readers above hold nothing
  private final CodeReader reader;

  private final int bytesPerCode;

  CodeFormat(int bytesPerCode, CodeReader reader) {
    this.bytesPerCode = bytesPerCode;
    this.reader = reader;
  }

  /** The bytes that one code takes. */
  public int bytesPerCode() {
    return bytesPerCode;
  }

  /** Whether codes are whole numbers, as a converter gives them. */
  public boolean isWhole() {
    return this != REAL_32_MSB_FIRST && this != REAL_32_LSB_FIRST && this != REAL_64_LSB_FIRST;
  }

  /** The code at {@code index} (counted in codes, from 0) of {@code block}. */
  public double codeAt(byte[] block, int index) {
    return reader.codeAt(block, index * bytesPerCode);
  }

  /** Reads one code at a byte's place; a call, not a choice, is what a loop can do without. */
  private interface CodeReader {
    double codeAt(byte[] block, int at);
  }

  /** Blocks seen as numbers. */
  private static final class Views {
    static final VarHandle SHORT_MSB = view(short[].class, ByteOrder.BIG_ENDIAN);
    static final VarHandle SHORT_LSB = view(short[].class, ByteOrder.LITTLE_ENDIAN);
    static final VarHandle FLOAT_MSB = view(float[].class, ByteOrder.BIG_ENDIAN);
    static final VarHandle FLOAT_LSB = view(float[].class, ByteOrder.LITTLE_ENDIAN);
    static final VarHandle DOUBLE_LSB = view(double[].class, ByteOrder.LITTLE_ENDIAN);

    private Views() {}

    private static VarHandle view(Class<?> arrayType, ByteOrder order) {
      return MethodHandles.byteArrayViewVarHandle(arrayType, order);
    }
  }
}

package mainsgap.scope;

import mainsgap.signal.CodeFormat;

/**
 * How a sample stands in the data.
 *
 * @param kind what it is
 * @param bytes that it takes; 0 where the length of the data decides between one and two
 * @param lsbFirst whether the least significant byte comes first
 */
record CodeLayout(Kind kind, int bytes, boolean lsbFirst) {

  /** Numbers that came as text, kept whole. */
  static final CodeLayout TEXT = new CodeLayout(Kind.VOLTS, Double.BYTES, true);

  /** What a sample is. */
  enum Kind {
    SIGNED,
    UNSIGNED,
    /** A floating-point number that needs no scale. */
    VOLTS
  }

  /** Which byte of a sample comes first. */
  enum ByteOrder {
    LSB_FIRST,
    MSB_FIRST
  }

  boolean isVolts() {
    return kind == Kind.VOLTS;
  }

  int leastBytes() {
    return bytes == 0 ? 1 : bytes;
  }

  int mostBytes() {
    return bytes == 0 ? 2 : bytes;
  }

  /** The lowest code of {@code width} bytes. */
  double lowestCode(int width) {
    return kind == Kind.SIGNED ? -Math.pow(2, 8.0 * width - 1) : 0;
  }

  /** The highest code of {@code width} bytes. */
  double highestCode(int width) {
    return lowestCode(width) + Math.pow(2, 8.0 * width) - 1;
  }

  /** The format of a sample of {@code width} bytes. */
  CodeFormat format(int width) {
    return switch (kind) {
      case SIGNED -> width == 1 ? CodeFormat.SIGNED_8 : signed16();
      case UNSIGNED -> width == 1 ? CodeFormat.UNSIGNED_8 : unsigned16();
      case VOLTS -> width == Double.BYTES ? CodeFormat.REAL_64_LSB_FIRST : real32();
    };
  }

  private CodeFormat signed16() {
    return lsbFirst ? CodeFormat.SIGNED_16_LSB_FIRST : CodeFormat.SIGNED_16_MSB_FIRST;
  }

  private CodeFormat unsigned16() {
    return lsbFirst ? CodeFormat.UNSIGNED_16_LSB_FIRST : CodeFormat.UNSIGNED_16_MSB_FIRST;
  }

  private CodeFormat real32() {
    return lsbFirst ? CodeFormat.REAL_32_LSB_FIRST : CodeFormat.REAL_32_MSB_FIRST;
  }
}

package mainsgap.session;

import java.util.Arrays;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/** Data blocks in zlib form (RFC 1950). */
final class PackedBlock {
  /** Room for a block that does not shrink: stored pieces of 16 kB each have 5 bytes of header. */
  private static final int SPARE_BYTES = 64;

  /** Deflate makes no more than this of one byte: what claims more is not unpacked at all. */
  private static final long LARGEST_RATIO = 1032;

  private PackedBlock() {}

  /** Packs {@code block}. */
  static byte[] pack(byte[] block) {
    // fast rather than small: the next arming waits for it
    Deflater deflater = new Deflater(Deflater.BEST_SPEED);
    try {
      deflater.setInput(block);
      deflater.finish();
      byte[] packed = new byte[block.length + block.length / 1024 + SPARE_BYTES];
      int length = 0;
      while (!deflater.finished()) {
        if (length == packed.length) {
          packed = Arrays.copyOf(packed, packed.length * 2);
        }
        length += deflater.deflate(packed, length, packed.length - length);
      }
      return Arrays.copyOf(packed, length);
    } finally {
      deflater.end();
    }
  }

  /**
   * Unpacks a block of {@code length} bytes, and never more.
   *
   * @throws DataFormatException if it is not a packed block of that length
   */
  static byte[] unpack(byte[] packed, int length) throws DataFormatException {
    if (length > LARGEST_RATIO * packed.length) {
      throw new DataFormatException(
          packed.length + " bytes are too few to hold the " + length + " that they should");
    }
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(packed);
      byte[] block = new byte[length];
      int found = 0;
      while (found < length) {
        int more = inflater.inflate(block, found, length - found);
        if (more == 0) {
          throw new DataFormatException("it ends after " + found + " of " + length + " bytes");
        }
        found += more;
      }
      if (inflater.inflate(new byte[1]) != 0 || !inflater.finished()) {
        throw new DataFormatException("it holds more than the " + length + " bytes it should");
      }
      return block;
    } finally {
      inflater.end();
    }
  }
}

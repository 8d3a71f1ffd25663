package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.zip.DataFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PackedBlockTest {

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 1000, 5_000_000})
  void blockOfOneValueComesBack(int length) throws DataFormatException {
    byte[] block = new byte[length];
    Arrays.fill(block, (byte) 7);
    assertArrayEquals(block, PackedBlock.unpack(PackedBlock.pack(block), length));
  }

  @Test
  void blockThatDoesNotShrinkComesBack() throws DataFormatException {
    byte[] block = new byte[100_000];
    new SplittableRandom(1).nextBytes(block);
    assertArrayEquals(block, PackedBlock.unpack(PackedBlock.pack(block), block.length));
  }

  /** RFC 1951 codes at most 258 bytes by 2 bits: no byte holds more than 1032. */
  @Test
  void memoryIsNotTakenForWhatThePackedBytesCannotHold() {
    byte[] packed = PackedBlock.pack(new byte[] {1, 2, 3});
    DataFormatException refused =
        assertThrows(
            DataFormatException.class, () -> PackedBlock.unpack(packed, Integer.MAX_VALUE));
    assertEquals(
        packed.length + " bytes are too few to hold the 2147483647 that they should",
        refused.getMessage());
  }

  @ParameterizedTest
  @CsvSource({"4, it ends after 3 of 4 bytes", "2, it holds more than the 2 bytes it should"})
  void anotherLengthThanWasSealedIsTold(int length, String sentence) {
    byte[] packed = PackedBlock.pack(new byte[] {1, 2, 3});
    DataFormatException refused =
        assertThrows(DataFormatException.class, () -> PackedBlock.unpack(packed, length));
    assertEquals(sentence, refused.getMessage());
  }
}

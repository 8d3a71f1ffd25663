package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaveformTest {

  /** Two's complement and IEEE 754, written out by hand: 0x3FC00000 is 1.5, 0xC0000000 is -2. */
  @ParameterizedTest
  @CsvSource({
    "UNSIGNED_8, 00 FF, 0, 255",
    "SIGNED_8, 7F 80, 127, -128",
    "UNSIGNED_16_MSB_FIRST, 01 02 FF FF, 258, 65535",
    "UNSIGNED_16_LSB_FIRST, 01 02 FF FF, 513, 65535",
    "SIGNED_16_MSB_FIRST, 80 00 FF FE, -32768, -2",
    "SIGNED_16_LSB_FIRST, 00 80 FE FF, -32768, -2",
    "REAL_32_MSB_FIRST, 3F C0 00 00 C0 00 00 00, 1.5, -2",
    "REAL_32_LSB_FIRST, 00 00 C0 3F 00 00 00 C0, 1.5, -2",
    "REAL_64_LSB_FIRST, 00 00 00 00 00 00 F8 3F 00 00 00 00 00 00 00 C0, 1.5, -2",
  })
  void codesAreReadAsTheyStandInTheBlock(
      CodeFormat format, String block, double first, double second) {
    byte[] bytes = HexFormat.ofDelimiter(" ").parseHex(block);
    Waveform waveform = new Waveform(bytes, format, Scale.VOLTS);
    assertArrayEquals(new double[] {first, second}, waveform.volts());
  }

  @Test
  void codesBecomeVoltsByTheirScale() {
    Scale scale = new Scale(128, 4, 10, 0, 255);
    Waveform waveform =
        new Waveform(new byte[] {0, (byte) 128, (byte) 254}, CodeFormat.UNSIGNED_8, scale);
    assertArrayEquals(new double[] {-502, 10, 514}, waveform.volts());
    assertArrayEquals(new double[] {10}, waveform.volts(1, 2));
  }

  @Test
  void railsThemselvesAreClipped() {
    Scale scale = new Scale(0, 1, 0, 1, 254);
    Waveform waveform =
        new Waveform(new byte[] {1, 2, (byte) 253, (byte) 254}, CodeFormat.UNSIGNED_8, scale);
    assertTrue(waveform.isClippedAt(0));
    assertFalse(waveform.isClippedAt(1));
    assertFalse(waveform.isClippedAt(2));
    assertTrue(waveform.isClippedAt(3));
  }

  @Test
  void brokenBlockIsToldWithItsLength() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Waveform(new byte[3], CodeFormat.SIGNED_16_LSB_FIRST, Scale.VOLTS));
    assertEquals("a block of 3 bytes is not a whole number of 2-byte codes", refused.getMessage());
  }
}

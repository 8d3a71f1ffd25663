package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/**
 * Byte for byte. The message and the header of the reply (in UsbtmcReplyTest) were seen in a log of
 * the Linux kernel; the requests follow from the layout in which three independent implementations
 * agree.
 */
class UsbtmcFramesTest {

  @Test
  void aMessageIsFilledUpToAMultipleOfFour() {
    byte[] message = "*IDN?\n".getBytes(US_ASCII);
    assertBytes(
        "01 01 FE 00 06000000 01 000000 2A49444E3F0A 0000",
        UsbtmcFrames.message(1, message, 0, message.length, true));
  }

  @Test
  void aMessageInTwoTransfersEndsWithTheSecond() {
    byte[] message = "ABCDEFGH".getBytes(US_ASCII);
    assertBytes(
        "01 07 F8 00 04000000 00 000000 41424344", UsbtmcFrames.message(7, message, 0, 4, false));
    assertBytes(
        "01 08 F7 00 03000000 01 000000 454647 00", UsbtmcFrames.message(8, message, 4, 3, true));
  }

  @Test
  void aRequestSaysHowMuchIsWanted() {
    assertBytes("02 02 FD 00 00040000 00 00 0000", UsbtmcFrames.request(2, 1024));
    assertBytes("02 FF 00 00 FFFFFF7F 00 00 0000", UsbtmcFrames.request(255, Integer.MAX_VALUE));
  }

  @Test
  void aRequestMayNameTheCharacterThatEndsTheReply() {
    assertBytes("02 02 FD 00 00040000 02 0A 0000", UsbtmcFrames.requestUpTo(2, 1024, (byte) '\n'));
  }

  @Test
  void tagsGoFrom1To255AndLeaveOut0() {
    assertEquals(1, UsbtmcFrames.tagAfter(0));
    assertEquals(128, UsbtmcFrames.tagAfter(127));
    assertEquals(255, UsbtmcFrames.tagAfter(254));
    assertEquals(1, UsbtmcFrames.tagAfter(255));
  }

  private static void assertBytes(String hex, byte[] bytes) {
    assertArrayEquals(HexFormat.of().parseHex(hex.replace(" ", "")), bytes);
  }
}

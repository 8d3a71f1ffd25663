package mainsgap.link;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The header is one that was seen in a log of the Linux kernel: tag 2, 55 bytes, the end. */
class UsbtmcReplyTest {
  private static final String HEADER = "02 02 FD 00 37000000 01 000000";

  private final byte[] into = new byte[1024];

  @Test
  void aReplyInOnePiece() throws UsbFault {
    byte[] whole = withData(HEADER, 55, 1);
    UsbtmcReply reply = new UsbtmcReply(2, into);
    assertTrue(reply.isEmpty());
    reply.take(whole, whole.length);
    assertTrue(reply.isWhole());
    assertTrue(reply.endsMessage());
    assertEquals(55, reply.bytes());
    assertArrayEquals(Arrays.copyOfRange(whole, 12, 67), Arrays.copyOf(into, 55));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 5, 11, 12, 13, 64, 67})
  void aReplyInPieces(int size) throws UsbFault {
    byte[] whole = withData(HEADER, 55, 1);
    UsbtmcReply reply = new UsbtmcReply(2, into);
    for (int from = 0; from < whole.length; from += size) {
      byte[] piece = Arrays.copyOfRange(whole, from, Math.min(whole.length, from + size));
      reply.take(piece, piece.length);
    }
    assertTrue(reply.isWhole());
    assertArrayEquals(Arrays.copyOfRange(whole, 12, 67), Arrays.copyOf(into, 55));
  }

  @Test
  void whatIsOwedIsKnownFromTheHeaderOn() throws UsbFault {
    UsbtmcReply reply = new UsbtmcReply(2, into);
    assertEquals(12, reply.owedBytes());
    reply.take(withData(HEADER, 10, 0), 22);
    assertFalse(reply.isWhole());
    assertEquals(46, reply.owedBytes(), "45 of data and one of padding");
    assertEquals("10 of the 55 bytes that its header claims", reply.progress());
  }

  @Test
  void withoutTheMarkTheMessageGoesOn() throws UsbFault {
    UsbtmcReply reply = new UsbtmcReply(2, into);
    byte[] whole = withData("02 02 FD 00 08000000 00 000000", 8, 0);
    reply.take(whole, whole.length);
    assertTrue(reply.isWhole());
    assertFalse(reply.endsMessage());
  }

  @Test
  void anEmptyTransferIsWhole() throws UsbFault {
    UsbtmcReply reply = new UsbtmcReply(2, into);
    reply.take(withData("02 02 FD 00 00000000 01 000000", 0, 0), 12);
    assertTrue(reply.isWhole());
    assertEquals(0, reply.bytes());
  }

  @Test
  void aShortHeaderIsNotWhole() throws UsbFault {
    UsbtmcReply reply = new UsbtmcReply(2, into);
    reply.take(new byte[] {2, 2, (byte) 0xFD}, 3);
    assertFalse(reply.isWhole());
    assertEquals("a header of 3 bytes where 12 should be", reply.progress());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "01 02 FD 00 37000000 01 000000 | a message of the kind 1 where 2 should be",
        "02 02 02 00 37000000 01 000000 | the tag 2 of its answer and its inverse do not fit",
        "02 03 FC 00 37000000 01 000000 | it answered the request 3 where 2 was asked",
        "02 02 FD 00 01040000 01 000000 | claims 1025 bytes where at most 1024 were asked for",
        "02 02 FD 00 FFFFFFFF 01 000000 | claims 4294967295 bytes where at most 1024",
      })
  void aHeaderThatLiesIsRefused(String header, String said) {
    UsbtmcReply reply = new UsbtmcReply(2, into);
    byte[] whole = withData(header, 0, 0);
    assertSays(assertThrows(UsbFault.class, () -> reply.take(whole, whole.length)), said);
  }

  @Test
  void moreThanTheHeaderClaimsIsRefused() {
    UsbtmcReply reply = new UsbtmcReply(2, into);
    byte[] whole = withData("02 02 FD 00 04000000 01 000000", 5, 0);
    assertSays(
        assertThrows(UsbFault.class, () -> reply.take(whole, whole.length)),
        "it sent 1 bytes behind the 4 that its header claims");
  }

  private static byte[] withData(String header, int bytes, int padding) {
    byte[] head = HexFormat.of().parseHex(header.replace(" ", ""));
    byte[] whole = Arrays.copyOf(head, head.length + bytes + padding);
    for (int i = 0; i < bytes; i++) {
      whole[head.length + i] = (byte) (i + 1);
    }
    return whole;
  }
}

package mainsgap.scpi;

import static mainsgap.Sentences.assertSays;
import static mainsgap.link.LoopbackPeer.ascii;
import static mainsgap.link.LoopbackPeer.block;
import static mainsgap.link.LoopbackPeer.bytes;
import static mainsgap.link.LoopbackPeer.oneByOne;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Random;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.waiting.Clock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Blocks of IEEE 488.2 8.7.9 (definite length) and 8.7.10 (indefinite length). */
class BlockTest {
  private static final ScpiOptions QUICK =
      ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(150));

  private LoopbackPeer peer;
  private ScpiInstrument instrument;

  @BeforeEach
  void connect() throws IOException {
    peer = new LoopbackPeer().answer(":SYST:ERR?", "0,\"No error\"").answer("NEXT?", "next");
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), QUICK, Clock.system());
  }

  @AfterEach
  void close() throws IOException {
    assertEquals("next", instrument.query("NEXT?"), "the two sides stay in step");
    instrument.close();
    peer.close();
  }

  /** The two examples, and one with leading zeros in its count, are public worked examples. */
  @ParameterizedTest
  @CsvSource({
    "#15ABCDE, ABCDE",
    "#210ABCDEFGHIJ, ABCDEFGHIJ",
    "#800000005ABCDE, ABCDE",
    "#10, ''",
    ":CURV #15ABCDE, ABCDE",
    "'C1:WF DAT2,#15ABCDE', ABCDE",
  })
  void aBlockIsReadByItsCount(String sent, String data) {
    peer.answer("D?", sent);
    assertEquals(data, new String(instrument.queryBlock("D?", 10), StandardCharsets.ISO_8859_1));
  }

  /**
   * FORMat REAL,32 of SCPI-1999: 0, 1.5, -0.25 and 9.91E37 (not a number), most significant byte
   * first; the bytes were computed by IEEE 754.
   */
  @Test
  void realsOfABlockAreTheirBytes() {
    byte[] wire = HexFormat.of().parseHex("23323136000000003FC00000BE8000007E951BEE0A");
    peer.answer("D?", bytes(wire));
    ByteBuffer data = ByteBuffer.wrap(instrument.queryBlock("D?", 16));
    assertEquals(0f, data.getFloat());
    assertEquals(1.5f, data.getFloat());
    assertEquals(-0.25f, data.getFloat());
    assertEquals(Double.NaN, ScpiNumber.meaning(data.getFloat()));
  }

  @Test
  void newLinesAndHashesInsideAreData() {
    byte[] data = ascii("\n#15\r\n#0\n");
    peer.answer("D?", bytes(block(data)));
    assertArrayEquals(data, instrument.queryBlock("D?", 100));
  }

  @Test
  void aLargeBlockIsWhole() {
    byte[] data = new byte[1_000_003];
    new Random(1).nextBytes(data);
    peer.answer("D?", bytes(block(data)));
    assertArrayEquals(data, instrument.queryBlock("D?", data.length));
  }

  @Test
  void aBlockMayComeByteByByte() {
    byte[] data = new byte[300];
    new Random(1).nextBytes(data);
    peer.answer("D?", oneByOne(block(data)));
    assertArrayEquals(data, instrument.queryBlock("D?", 300));
  }

  @ParameterizedTest
  @ValueSource(strings = {"#15ABCDE", "#15ABCDEx", "#15ABCDEx\n"})
  void theNlBehindABlockMayLackOrFollowAnotherByte(String sent) {
    peer.answer("D?", bytes(ascii(sent)));
    assertArrayEquals(ascii("ABCDE"), instrument.queryBlock("D?", 5));
  }

  @Test
  void anNlThatComesTooLateIsNotTheNextReply() {
    peer.answer("D?", bytes(ascii("#15ABCDE"))).answer("LATE?", bytes(ascii("\nlate\n")));
    assertArrayEquals(ascii("ABCDE"), instrument.queryBlock("D?", 5));
    assertEquals("late", instrument.query("LATE?"));
  }

  @Test
  void aHeaderThatClaimsMoreThanPlannedIsRefusedBeforeAnythingIsAllocated() {
    peer.answer("D?", "#9999999999ABC");
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 1000));
    assertEquals(
        instrument.resource()
            + ", asked 'D?', gave no usable reply: its header claims 999999999 bytes where at most"
            + " 1000 were planned",
        e.getMessage());
  }

  @Test
  void moreDataThanTheHeaderClaimsAreRefused() {
    peer.answer("D?", "#15" + "A".repeat(1000));
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 1000));
    assertSays(e, "more data follow the 5 bytes that its header claims");
  }

  @Test
  void aShortBlockSaysHowFarItCame() {
    peer.answer("D?", bytes(ascii("#210ABCD\n")));
    ReplyTimeoutException e =
        assertThrows(ReplyTimeoutException.class, () -> instrument.queryBlock("D?", 10));
    assertSays(e, "(after 5 of 10 bytes of data)");
  }

  @ParameterizedTest
  @CsvSource({
    "no data, it says 'no data' where a block of data should be",
    "'', it says '' where a block of data should be",
    "#HFF, the header of the block has 'H' where a digit should be",
    "#2x5ABCDE, the header of the block has 'x' where a digit should be",
  })
  void textForABlockIsRefused(String sent, String sentence) {
    peer.answer("D?", sent);
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 10));
    assertSays(e, sentence);
  }

  @Test
  void aBlockOfUnstatedLengthIsRefusedOnALinkThatMarksNoEnd() {
    peer.answer("D?", "#0ABCDE");
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 10));
    assertSays(e, "(#0), whose end this link cannot tell");
  }
}

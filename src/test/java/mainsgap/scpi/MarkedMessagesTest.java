package mainsgap.scpi;

import static mainsgap.Sentences.assertSays;
import static mainsgap.link.LoopbackPeer.ascii;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.util.OptionalInt;
import mainsgap.link.Link;
import mainsgap.link.Received;
import mainsgap.link.ResourceName;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.Test;

/** Replies on a link that marks the end of a message, as message transports do. */
class MarkedMessagesTest {

  @Test
  void aLineMayEndByItsMarkAlone() {
    assertEquals("1.5", instrument("1.5").query("A?"));
  }

  @Test
  void aBlockMayEndByItsMarkAlone() {
    assertArrayEquals(ascii("ABCDE"), instrument("#15ABCDE").queryBlock("D?", 5));
  }

  @Test
  void aBlockCutShortByItsMarkIsRefused() {
    ScpiInstrument instrument = instrument("#15ABC");
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 5));
    assertSays(e, "the block ended after 3 of 5 bytes of data");
  }

  @Test
  void aHeaderCutShortByItsMarkIsRefused() {
    ScpiInstrument instrument = instrument("#2");
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 5));
    assertSays(e, "the header of the block is cut off");
  }

  /** IEEE 488.2 8.7.10: ends with NL and the mark; an NL inside is data. */
  @Test
  void aBlockOfUnstatedLengthEndsByNlAndMark() {
    assertArrayEquals(ascii("AB\nCD"), instrument("#0AB\nCD\n").queryBlock("D?", 5));
  }

  @Test
  void aBlockOfUnstatedLengthStaysWithinWhatWasPlanned() {
    ScpiInstrument instrument = instrument("#0ABCDEF\n");
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 5));
    assertSays(e, "goes on past the 5 bytes planned");
  }

  @Test
  void whatStandsBehindALineUpToItsMarkIsNoPartOfTheNextReply() {
    OneReply link = new OneReply(ByteBuffer.wrap(ascii("1.5\n\r\n")));
    ScpiInstrument instrument = new ScpiInstrument(link, ScpiOptions.standard(), new ManualClock());
    assertEquals("1.5", instrument.query("A?"));
    assertEquals(0, link.reply().remaining());
  }

  @Test
  void aSecondLineBeforeTheMarkIsRefused() {
    ScpiException e =
        assertThrows(
            ScpiException.class, () -> instrument("1.5\na second line of text\n").query("A?"));
    assertSays(e, "more data follow the end of the line");
  }

  @Test
  void dataBehindABlockUpToTheMarkAreRefused() {
    String reply = "#15ABCDE" + "X".repeat(20);
    ScpiException e =
        assertThrows(ScpiException.class, () -> instrument(reply).queryBlock("D?", 5));
    assertSays(e, "more data follow the 5 bytes that its header claims");
  }

  private static ScpiInstrument instrument(String reply) {
    return new ScpiInstrument(
        new OneReply(ByteBuffer.wrap(ascii(reply))), ScpiOptions.standard(), new ManualClock());
  }

  /** Gives its reply in pieces of at most three bytes and marks its end. */
  private record OneReply(ByteBuffer reply) implements Link {
    @Override
    public ResourceName resource() {
      return ResourceName.parse("TCPIP::scope.local::inst0::INSTR");
    }

    @Override
    public void write(byte[] message, Deadline deadline) {}

    @Override
    public Received read(ByteBuffer into, Deadline deadline) {
      int bytes = Math.min(3, Math.min(into.remaining(), reply.remaining()));
      for (int i = 0; i < bytes; i++) {
        into.put(reply.get());
      }
      return new Received(bytes, !reply.hasRemaining());
    }

    @Override
    public boolean marksMessageEnd() {
      return true;
    }

    @Override
    public OptionalInt statusByte(Deadline deadline) {
      return OptionalInt.empty();
    }

    @Override
    public void clear(Deadline deadline) {}

    @Override
    public void close() {}
  }
}

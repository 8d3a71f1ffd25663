package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class BlockReaderTest {
  private static final int PART = 2000;

  private static final CodeLayout CODES = new CodeLayout(CodeLayout.Kind.UNSIGNED, 0, true);

  private final WaveformTransfer how =
      InstrumentProfiles.load(ShippedProfilesTest.FOLDER).named("ten-field-preamble").waveform();
  private LoopbackPeer peer;
  private ScpiInstrument instrument;

  @BeforeEach
  void open() throws IOException {
    peer = new LoopbackPeer().answer(":SYST:ERR?", "0,\"No error\"");
    ScpiOptions options = ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(200));
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), options, Clock.system());
  }

  @AfterEach
  void end() throws IOException {
    instrument.close();
    peer.close();
  }

  @Test
  void aPartThatDoesNotComeIsAskedForInHalves() {
    peer.answer(":WAV:DATA?", LoopbackPeer.silence())
        .answer(":WAV:DATA?", blockOf(1))
        .answer(":WAV:DATA?", blockOf(2));
    byte[] codes = reader().read(1, 2 * PART, CODES);
    assertEquals(2 * PART, codes.length);
    assertArrayEquals(filled(1), Arrays.copyOf(codes, PART));
    assertArrayEquals(filled(2), Arrays.copyOfRange(codes, PART, 2 * PART));
    assertTrue(
        peer.received().containsAll(List.of(":WAV:STOP 4000", ":WAV:STOP 2000", ":WAV:STAR 2001")),
        () -> peer.received().toString());
  }

  @Test
  void silenceOnTheSmallestPartEndsInASentence() {
    peer.answer(":WAV:DATA?", LoopbackPeer.silence());
    BlockReader reader = reader();
    String sentence =
        String.valueOf(
            assertThrows(ScopeException.class, () -> reader.read(1, PART, CODES)).getMessage());
    assertTrue(sentence.startsWith("reading channel 1: "), sentence);
    assertTrue(sentence.contains("gave no whole reply to ':WAV:DATA?'"), sentence);
  }

  @Test
  void aLaterPartOfAnotherWidthIsRefused() {
    peer.answer(":WAV:DATA?", LoopbackPeer.silence())
        .answer(":WAV:DATA?", LoopbackPeer.bytes(LoopbackPeer.block(new byte[2 * PART])))
        .answer(":WAV:DATA?", blockOf(1));
    BlockReader reader = reader();
    String sentence =
        String.valueOf(
            assertThrows(ScopeException.class, () -> reader.read(1, 2 * PART, CODES)).getMessage());
    assertTrue(sentence.contains("the block from sample 2001 on has 2000 bytes, expected 2"));
  }

  private BlockReader reader() {
    Exchange exchange = new Exchange(instrument);
    Preparing unprepared =
        new Preparing(
            exchange,
            Optional.empty(),
            new Pauses(Clock.system(), new StopRequest()),
            "reading channel 1");
    return new BlockReader(exchange, how.fetching(), unprepared, "reading channel 1");
  }

  private static LoopbackPeer.Answer blockOf(int value) {
    return LoopbackPeer.bytes(LoopbackPeer.block(filled(value)));
  }

  private static byte[] filled(int value) {
    byte[] bytes = new byte[PART];
    Arrays.fill(bytes, (byte) value);
    return bytes;
  }
}

package mainsgap.scpi;

import static mainsgap.Sentences.assertSays;
import static mainsgap.link.LoopbackPeer.ascii;
import static mainsgap.link.LoopbackPeer.block;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import mainsgap.link.Link;
import mainsgap.link.LinkClosedException;
import mainsgap.link.LinkException;
import mainsgap.link.LinkPeer;
import mainsgap.link.LinkPeer.Manner;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * What every kind of link must do, good peer or bad. A subclass for each kind says which peer is at
 * the far end; see {@link LinkPeer}.
 */
@Timeout(20) // the net under links that wait for ever, not a measurement
abstract class LinkSuite {
  /** Short, since the tests of silence wait for it to pass. */
  private static final Duration PATIENCE = Duration.ofMillis(400);

  private static final byte[] SAMPLES = bytes(1000);

  private LinkPeer peer;
  private ScpiInstrument instrument;

  /** Starts the peer of this kind of link. */
  abstract LinkPeer peer() throws IOException;

  @BeforeEach
  void connect() throws IOException {
    peer = peer();
    peer.answer("A?", Manner.WHOLE, ascii("1.5\n"));
    instrument = instrument();
  }

  @AfterEach
  void close() throws IOException {
    instrument.close();
    peer.close();
  }

  @Test
  void aQueryIsAnswered() {
    assertEquals("1.5", instrument.query("A?"));
    assertEquals("1.5", instrument.query("A?"));
  }

  @Test
  void aMessageOfManyKilobytesArrivesWhole() {
    String message = "B? " + "x".repeat(50_000);
    peer.answer(message, Manner.WHOLE, ascii("whole\n"));
    assertEquals("whole", instrument.query(message));
    theNextExchangeWorks();
  }

  @Test
  void aBlockOfMegabytesComesWhole() {
    byte[] samples = bytes(3_000_000);
    peer.answer("D?", Manner.WHOLE, block(samples));
    assertArrayEquals(samples, instrument.queryBlock("D?", samples.length));
    theNextExchangeWorks();
  }

  @Test
  void aSlowPeerIsHeardOut() {
    peer.answer("D?", Manner.ONE_BYTE_AT_A_TIME, block(SAMPLES));
    peer.answer("L?", Manner.ONE_BYTE_AT_A_TIME, ascii("2.5\n"));
    assertArrayEquals(SAMPLES, instrument.queryBlock("D?", SAMPLES.length));
    assertEquals("2.5", instrument.query("L?"));
    theNextExchangeWorks();
  }

  @Test
  void anEndThatComesByItselfBelongsToItsReply() {
    if (hasNo(Manner.END_APART)) {
      return;
    }
    peer.answer("D?", Manner.END_APART, block(SAMPLES));
    peer.answer("L?", Manner.END_APART, ascii("2.5\n"));
    assertEquals("2.5", instrument.query("L?"));
    assertArrayEquals(SAMPLES, instrument.queryBlock("D?", SAMPLES.length));
    theNextExchangeWorks();
  }

  @Test
  void afterSilenceTheLinkIsClearedAndUsedAgain() {
    ReplyTimeoutException e =
        assertThrows(ReplyTimeoutException.class, () -> instrument.query("NEVER?"));
    assertSays(e, "gave no whole reply to 'NEVER?' within 400 ms (before any byte)");
    theNextExchangeWorks();
  }

  @Test
  void aBlockThatStopsHalfwayIsGivenUpAndTheLinkUsedAgain() {
    if (hasNo(Manner.STALLS_HALFWAY)) {
      return;
    }
    peer.answer("D?", Manner.STALLS_HALFWAY, block(SAMPLES));
    ReplyTimeoutException e =
        assertThrows(
            ReplyTimeoutException.class, () -> instrument.queryBlock("D?", SAMPLES.length));
    assertSays(e, "of 1000 bytes of data");
    theNextExchangeWorks();
  }

  @Test
  void aConnectionClosedHalfwayIsToldAndConnectedAgain() {
    if (hasNo(Manner.CLOSES_HALFWAY)) {
      return;
    }
    peer.answer("D?", Manner.CLOSES_HALFWAY, block(SAMPLES));
    LinkClosedException e =
        assertThrows(LinkClosedException.class, () -> instrument.queryBlock("D?", SAMPLES.length));
    assertSays(e, "the reply to 'D?' broke off", "connect again");
    connectAgain();
    theNextExchangeWorks();
  }

  @Test
  void aBlockThatClaimsMoreThanWasPlannedIsRefusedAndTheLinkUsedAgain() {
    peer.answer("D?", Manner.WHOLE, block(SAMPLES));
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryBlock("D?", 999));
    assertSays(e, "claims 1000 bytes where at most 999 were planned");
    theNextExchangeWorks();
  }

  @Test
  void aFrameThatClaimsMoreThanFollowsIsToldAndConnectedAgain() {
    if (hasNo(Manner.FRAME_CLAIMS_MORE)) {
      return;
    }
    peer.answer("D?", Manner.FRAME_CLAIMS_MORE, block(SAMPLES));
    aFault(() -> instrument.queryBlock("D?", SAMPLES.length + 100_000));
    peer.answer("L?", Manner.FRAME_CLAIMS_MORE, ascii("2.5"));
    connectAgain();
    aFault(() -> instrument.query("L?"));
    connectAgain();
    theNextExchangeWorks();
  }

  @Test
  void aWrongFrameIsToldAndConnectedAgain() {
    if (hasNo(Manner.WRONG_FRAME)) {
      return;
    }
    peer.answer("D?", Manner.WRONG_FRAME, block(SAMPLES));
    aFault(() -> instrument.queryBlock("D?", SAMPLES.length));
    connectAgain();
    theNextExchangeWorks();
  }

  @Test
  void closingFromAnotherThreadEndsAWait() {
    Link link = peer.open(Deadline.after(Duration.ofSeconds(2), Clock.system()));
    ScpiOptions patient = ScpiOptions.standard().withReplyTimeout(Duration.ofMinutes(1));
    ScpiInstrument waiting = new ScpiInstrument(link, patient, Clock.system());
    CompletableFuture<String> reply = CompletableFuture.supplyAsync(() -> waiting.query("NEVER?"));
    waiting.close();
    CompletionException e = assertThrows(CompletionException.class, reply::join);
    assertInstanceOf(LinkClosedException.class, e.getCause());
    assertSays(e.getCause(), "was closed by this program");
  }

  @Test
  void aClosedLinkIsOpenedAnew() {
    theNextExchangeWorks();
    connectAgain();
    theNextExchangeWorks();
  }

  @Test
  void theStatusByteIsAByteWhereTheLinkHasOne() {
    try (Link link = peer.open(Deadline.after(Duration.ofSeconds(2), Clock.system()))) {
      OptionalInt status = link.statusByte(Deadline.after(PATIENCE, Clock.system()));
      assertTrue(status.orElse(0) >= 0 && status.orElse(0) <= 255, () -> "it is " + status);
    }
  }

  private void theNextExchangeWorks() {
    assertEquals("1.5", instrument.query("A?"));
  }

  private void connectAgain() {
    instrument.close();
    instrument = instrument();
  }

  private ScpiInstrument instrument() {
    Link link = peer.open(Deadline.after(Duration.ofSeconds(2), Clock.system()));
    ScpiOptions options = new ScpiOptions(PATIENCE, PATIENCE, Duration.ZERO, "\n", 64 * 1024);
    return new ScpiInstrument(link, options, Clock.system());
  }

  /** A lie of the link may show as a fault of the link or of the reply; either names the place. */
  private void aFault(Runnable exchange) {
    RuntimeException e = assertThrows(RuntimeException.class, exchange::run);
    assertTrue(e instanceof LinkException || e instanceof ScpiException, () -> "it is " + e);
    assertSays(e, instrument.resource().toString());
  }

  /** Not a skip: what a kind of link has no way to do needs no test. */
  private boolean hasNo(Manner manner) {
    return !peer.manners().contains(manner);
  }

  private static byte[] bytes(int count) {
    byte[] bytes = new byte[count];
    new Random(count).nextBytes(bytes);
    return Arrays.copyOf(bytes, count);
  }
}

package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static mainsgap.link.HislipPeer.header;
import static mainsgap.link.LoopbackPeer.ascii;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The rules of IVI-6.1 (clauses as in revision 2.0), against bytes written by hand. */
@Timeout(20)
class HislipLinkTest {
  private static final int DATA = 6;
  private static final int DATA_END = 7;

  private HislipPeer peer;

  @BeforeEach
  void serve() throws IOException {
    peer = new HislipPeer();
    peer.on("A?", client -> client.reply(ascii("1.5\n")));
  }

  @AfterEach
  void stop() throws IOException {
    peer.close();
  }

  /** 3.1.2: numbers from FFFFFF00 up by two; 3.1.1: bit 0 once after each reply taken. */
  @Test
  void messagesAreNumberedAndSayOnceThatTheReplyWasTaken() {
    try (Link link = open()) {
      assertEquals("1.5\n", ask(link, "A?"));
      assertEquals("1.5\n", ask(link, "A?"));
      write(link, "B");
      write(link, "C");
      ask(link, "A?"); // now all have arrived
    }
    assertEquals(
        List.of(
            "48530700ffffff000000000000000003",
            "48530701ffffff020000000000000003",
            "48530701ffffff040000000000000002",
            "48530700ffffff060000000000000002"),
        peer.received().subList(0, 4));
  }

  @Test
  void theStatusIsAskedOnTheOtherChannelWithTheNumberOfTheNewestMessage() {
    try (Link link = open()) {
      assertEquals(OptionalInt.of(0x50), link.statusByte(within(2000)));
      ask(link, "A?");
      link.statusByte(within(2000));
      write(link, "B");
      ask(link, "A?"); // now all have arrived
    }
    assertEquals(
        List.of(
            "48531500fffffefe0000000000000000", // 6.14: two below the first where none was sent
            "48530700ffffff000000000000000003",
            "48531501ffffff000000000000000000",
            "48530700ffffff020000000000000002"),
        peer.received().subList(0, 4));
  }

  @Test
  void theStatusComesWhileAReplyIsAwaited() {
    try (Link link = open()) {
      write(link, "NEVER?");
      assertEquals(OptionalInt.of(0x50), link.statusByte(within(2000)));
    }
  }

  @Test
  void aRequestForServiceIsNoAnswerToAStatusQuery() {
    peer.onStatusQuery(
        client ->
            client.asynchronous(
                "48531440000000000000000000000000" + "48531604000000000000000000000000"));
    try (Link link = open()) {
      assertEquals(OptionalInt.of(4), link.statusByte(within(2000)));
    }
  }

  @Test
  void aStatusThatCameTooLateIsNotTakenForTheNext() {
    peer.onStatusQuery(client -> {});
    try (Link link = open()) {
      assertThrows(LinkTimeoutException.class, () -> link.statusByte(within(50)));
      peer.onStatusQuery(
          client ->
              client.asynchronous(
                  "48531601000000000000000000000000" + "48531602000000000000000000000000"));
      assertEquals(OptionalInt.of(2), link.statusByte(within(2000)));
    }
  }

  /** 6.10: no message is longer than the server said, its header included. */
  @Test
  void aLongMessageGoesOutInPieces() {
    peer.takingAtMost(26).on("0123456789ABCDEFGHIJKLMNO?", client -> client.reply(ascii("OK\n")));
    try (Link link = open()) {
      assertEquals("OK\n", ask(link, "0123456789ABCDEFGHIJKLMNO?"));
    }
    assertEquals(
        List.of(header(6, 0xFFFFFF00, 10), header(6, 0xFFFFFF02, 10), header(7, 0xFFFFFF04, 7)),
        peer.received().subList(0, 3));
  }

  /** 3.1.2: synchronized mode. */
  @Test
  void aReplyToAnEarlierMessageIsDropped() {
    peer.on(
        "B?",
        client -> {
          client.frame(DATA_END, 0xFFFFFF00, 4);
          client.synchronous(ascii("old\n"));
          client.reply(ascii("new\n"));
        });
    try (Link link = open()) {
      write(link, "A");
      assertEquals("new\n", ask(link, "B?"));
    }
  }

  /** 3.1.1: a server that cannot tell the number of the message that it answers. */
  @Test
  void dataWithoutANumberIsTaken() {
    peer.on(
        "B?",
        client -> {
          client.frame(DATA, 0xFFFFFFFF, 2);
          client.synchronous(ascii("1."));
          client.data(DATA_END, ascii("5\n"));
        });
    try (Link link = open()) {
      assertEquals("1.5\n", ask(link, "B?"));
    }
  }

  @Test
  void inOverlappedModeRepliesHaveNumbersOfTheServer() {
    peer.overlapped()
        .on(
            "B?",
            client -> {
              client.frame(DATA_END, 0xFFFFFF00, 4);
              client.synchronous(ascii("1.5\n"));
            });
    try (Link link = open()) {
      write(link, "A");
      assertEquals("1.5\n", ask(link, "B?"));
    }
  }

  @Test
  void inOverlappedModeAReplyThatWasGivenUpIsDroppedToItsEnd() {
    peer.overlapped()
        .on(
            "D?",
            client -> {
              client.data(DATA, ascii("ABCD"));
              client.data(DATA, ascii("EFGH"));
              client.data(DATA_END, ascii("IJ\n"));
            });
    try (Link link = open()) {
      write(link, "D?");
      assertEquals(new Received(2, false), link.read(ByteBuffer.allocate(2), within(2000)));
      assertEquals("1.5\n", ask(link, "A?"));
      write(link, "D?");
      link.read(ByteBuffer.allocate(8), within(2000));
      link.read(ByteBuffer.allocate(8), within(2000));
      link.read(ByteBuffer.allocate(1), within(2000)); // in its last piece
      assertEquals("1.5\n", ask(link, "A?"));
    }
  }

  /** 3.1.2: Interrupted and AsyncInterrupted, either first, and what is between is nobody's. */
  @Test
  void anInterruptionEndsOnBothChannels() {
    peer.on(
        "B?",
        client -> {
          client.synchronous(header(13, 0xFFFFFF00, 0));
          client.asynchronous(header(14, 0, 0));
          client.reply(ascii("1\n"));
        });
    peer.on(
        "C?",
        client -> {
          client.frame(DATA, 0xFFFFFFFF, 3);
          client.synchronous(ascii("old"));
          client.synchronous(header(13, 0xFFFFFF00, 0));
          client.reply(ascii("2\n"));
        });
    peer.onStatusQuery(
        client -> client.asynchronous(header(14, 0, 0) + "48531650000000000000000000000000"));
    try (Link link = open()) {
      assertEquals("1\n", ask(link, "B?"));
      link.statusByte(within(2000));
      assertEquals("2\n", ask(link, "C?"));
      assertEquals("1.5\n", ask(link, "A?"));
    }
  }

  /** 6.12: 19 and 23 on the asynchronous channel, then 8 and 9 on the synchronous one. */
  @Test
  void aDeviceClearDropsWhatWasUnderWayAndNumbersAnew() {
    peer.overlapped()
        .on("OLD?", client -> client.reply(new byte[5_000_000])); // more than any socket buffers
    try (Link link = open()) {
      write(link, "OLD?");
      link.read(ByteBuffer.allocate(10), within(2000));
      link.clear(within(5000));
      assertEquals("1.5\n", ask(link, "A?"));
    }
    assertEquals(
        List.of(
            "48530700ffffff000000000000000005",
            "48531300000000000000000000000000",
            "48530800000000000000000000000000",
            "48530700ffffff000000000000000003"),
        peer.received());
  }

  @Test
  void aDeviceClearThatIsNotAcknowledgedEndsTheConnection() {
    peer.onClear(client -> {});
    try (Link link = open()) {
      LinkException e = assertThrows(LinkException.class, () -> link.clear(within(100)));
      assertSays(e, "did not finish the device clear in the time allowed: connect again");
      assertThrows(LinkClosedException.class, () -> write(link, "A?"));
      link.clear(within(2000)); // opens another session
      assertEquals("1.5\n", ask(link, "A?"));
    }
  }

  @Test
  void aDeviceClearEndsEvenOnAClockThatStandsStill() {
    peer.onClear(client -> {});
    Deadline standing = Deadline.after(Duration.ofMillis(60), new ManualClock());
    try (Link link = open()) {
      assertThrows(LinkException.class, () -> link.clear(standing));
    }
  }

  @Test
  void aFatalErrorIsToldWithTheServersOwnWords() {
    peer.on("B?", client -> client.synchronous("48530204000000000000000000000004" + "46756c6c"));
    try (Link link = open()) {
      write(link, "B?");
      LinkClosedException e = assertThrows(LinkClosedException.class, () -> read(link));
      assertSays(
          e,
          "ended the connection because of too many clients: close other programs that hold the"
              + " instrument ('Full'): connect again");
    }
  }

  @Test
  void anErrorIsToldAndTheSessionGoesOn() {
    peer.on("B?", client -> client.synchronous("48530304000000000000000000000000"));
    peer.on("C?", client -> client.synchronous("4853034d000000000000000000000000"));
    try (Link link = open()) {
      write(link, "B?");
      LinkException e = assertThrows(LinkException.class, () -> read(link));
      assertSays(e, "ignored a message because of a message that is too large");
      write(link, "C?");
      LinkException unknown = assertThrows(LinkException.class, () -> read(link));
      assertSays(unknown, "because of error 77, which IVI-6.1 does not know");
      assertEquals("1.5\n", ask(link, "A?"));
    }
  }

  @Test
  void aMessageOfAnUnknownTypeIsRefusedToTheServerAndPassedOver() {
    peer.on(
        "B?",
        client -> {
          client.synchronous(header(77, 0, 3) + "010203" + header(200, 0, 0));
          client.reply(ascii("2\n"));
        });
    try (Link link = open()) {
      assertEquals("2\n", ask(link, "B?"));
      assertEquals("1.5\n", ask(link, "A?"));
    }
    assertEquals(
        List.of("48530301000000000000000000000000", "48530303000000000000000000000000"),
        peer.received().subList(1, 3));
  }

  @Test
  void aMessageOutOfPlaceEndsTheConnection() {
    peer.on("B?", client -> client.synchronous(header(25, 0, 0)));
    try (Link link = open()) {
      write(link, "B?");
      LinkClosedException e = assertThrows(LinkClosedException.class, () -> read(link));
      assertSays(e, "sent the HiSLIP message ASYNC_LOCK_INFO_RESPONSE where a reply belongs");
    }
  }

  /** The wrong prologue is answered with FatalError 1 (table 14). */
  @Test
  void whatIsNoHislipIsNamedAndToldToTheServer() {
    peer.on("B?", client -> client.synchronous(ascii("HTTP/1.1 400 Bad Request")));
    try (Link link = open()) {
      write(link, "B?");
      LinkClosedException e = assertThrows(LinkClosedException.class, () -> read(link));
      assertSays(e, "begins with 4854 where HiSLIP has 4853: check that the port is the one for");
      assertThrows(LinkClosedException.class, () -> write(link, "A?"));
    }
  }

  @Test
  void aHeaderInPiecesIsReadOnAfterATimeout() {
    CompletableFuture<Void> goOn = new CompletableFuture<>();
    peer.on(
        "B?",
        client -> {
          String whole =
              header(DATA_END, client.lastId(), 4) + HexFormat.of().formatHex(ascii("1.5\n"));
          client.synchronous(whole.substring(0, 10));
          goOn.join();
          client.synchronous(whole.substring(10, 36));
          client.synchronous(whole.substring(36));
        });
    try (Link link = open()) {
      write(link, "B?");
      assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(9), within(80)));
      goOn.complete(null);
      assertEquals("1.5\n", read(link));
    }
  }

  @Test
  void anEmptyPieceBringsNothingAndAnEmptyLastPieceTheEnd() {
    peer.on(
        "B?",
        client -> {
          client.data(DATA, new byte[0]);
          client.data(DATA, ascii("2\n"));
          client.data(DATA_END, new byte[0]);
        });
    try (Link link = open()) {
      write(link, "B?");
      ByteBuffer into = ByteBuffer.allocate(9);
      assertEquals(new Received(2, false), link.read(into, within(2000)));
      assertEquals(new Received(0, true), link.read(into, within(2000)));
    }
  }

  @Test
  void aReadTakesNoMoreThanItsBufferHolds() {
    try (Link link = open()) {
      write(link, "A?");
      assertEquals(new Received(3, false), link.read(ByteBuffer.allocate(3), within(2000)));
      assertEquals(new Received(0, false), link.read(ByteBuffer.allocate(0), within(2000)));
      assertEquals(new Received(1, true), link.read(ByteBuffer.allocate(3), within(2000)));
    }
  }

  /** 6.1: bits 1 and 2 of the welcome. */
  @Test
  void aServerThatWantsEncryptionIsToldApart() {
    peer.welcoming("48530102020012340000000000000000");
    LinkException e = assertThrows(LinkException.class, this::open);
    assertSays(e, "wants an encrypted connection, which is not supported", "use another link");
  }

  @Test
  void aRefusalToOpenIsToldInTheServersWords() {
    peer.welcoming("48530203000000000000000000000002" + "6e6f");
    LinkClosedException e = assertThrows(LinkClosedException.class, this::open);
    assertSays(e, "because of a wrong order of opening messages ('no')");
  }

  @Test
  void closingFromAnotherThreadEndsAWaitOnEitherChannel() {
    peer.onStatusQuery(client -> {}).onClear(client -> {});
    assertClosedDuring(link -> link.read(ByteBuffer.allocate(1), within(60_000)));
    assertClosedDuring(link -> link.statusByte(within(60_000)));
    assertClosedDuring(link -> link.clear(within(60_000)));
  }

  private void assertClosedDuring(java.util.function.Consumer<Link> wait) {
    Link link = open();
    CompletableFuture<Void> waiting = CompletableFuture.runAsync(() -> wait.accept(link));
    link.close();
    CompletionException e = assertThrows(CompletionException.class, waiting::join);
    assertTrue(e.getCause() instanceof LinkClosedException, () -> "it is " + e.getCause());
    assertSays(e.getCause(), "was closed by this program");
  }

  private Link open() {
    return peer.open(within(2000));
  }

  private static String ask(Link link, String message) {
    write(link, message);
    return read(link);
  }

  private static void write(Link link, String message) {
    link.write((message + "\n").getBytes(US_ASCII), within(2000));
  }

  private static String read(Link link) {
    ByteBuffer into = ByteBuffer.allocate(100);
    while (!link.read(into, within(2000)).messageEnded()) {
      assertTrue(into.hasRemaining());
    }
    return new String(into.array(), 0, into.position(), US_ASCII);
  }

  private static Deadline within(long millis) {
    return Deadline.after(Duration.ofMillis(millis), Clock.system());
  }
}

package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class TcpLinkTest {
  private LoopbackPeer peer;
  private Link link;

  @BeforeEach
  void connect() throws IOException {
    peer = new LoopbackPeer();
    link = ResourceName.parse(peer.resource()).open(within(2000));
  }

  @AfterEach
  void close() throws IOException {
    link.close();
    peer.close();
  }

  @Test
  void aMessageGoesOutWholeAndItsAnswerComesBack() {
    peer.answer("*IDN?", "Loopback,Peer,0,1");
    ask("*IDN?");
    ByteBuffer into = ByteBuffer.allocate(100);
    Received received = link.read(into, within(2000));
    assertEquals(new Received(18, false), received);
    assertEquals("Loopback,Peer,0,1\n", new String(into.array(), 0, 18, US_ASCII));
    assertFalse(link.marksMessageEnd());
  }

  @Test
  void aReadTakesNoMoreThanItsBufferHolds() {
    peer.answer("A?", "12345");
    ask("A?");
    assertEquals(3, link.read(ByteBuffer.allocate(3), within(2000)).bytes());
    assertEquals(3, link.read(ByteBuffer.allocate(3), within(2000)).bytes());
  }

  @Test
  void silenceEndsAtTheDeadline() {
    LinkTimeoutException e =
        assertThrows(
            LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), within(50)));
    assertEquals(
        "TCPIP0::127.0.0.1::" + peer.port() + "::SOCKET sent nothing in the time allowed",
        e.getMessage());
  }

  @Test
  void silenceEndsEvenOnAClockThatStandsStill() {
    Deadline deadline = Deadline.after(Duration.ofMillis(50), new ManualClock());
    assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), deadline));
  }

  @Test
  void aPeerThatTakesNothingEndsTheWriteToo() throws IOException {
    try (ServerSocket deaf = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Link toDeaf =
          ResourceName.parse("TCPIP::127.0.0.1::" + deaf.getLocalPort() + "::SOCKET")
              .open(within(2000));
      byte[] moreThanAnyBuffer = new byte[32 << 20];
      assertThrows(LinkTimeoutException.class, () -> toDeaf.write(moreThanAnyBuffer, within(100)));
      toDeaf.close();
    }
  }

  @Test
  void theOtherSideClosing() {
    peer.answer("BYE", LoopbackPeer.bytesThenClose(new byte[0]));
    ask("BYE");
    LinkClosedException e =
        assertThrows(
            LinkClosedException.class, () -> link.read(ByteBuffer.allocate(1), within(2000)));
    assertSays(e, "closed the connection");
  }

  @Test
  void clearConnectsAgainAndLosesWhatWasUnderWay() {
    peer.answer("OLD?", "old").answer("NEW?", "new");
    ask("OLD?");
    link.clear(within(2000));
    ask("NEW?");
    ByteBuffer into = ByteBuffer.allocate(100);
    link.read(into, within(2000));
    assertEquals("new\n", new String(into.array(), 0, into.position(), US_ASCII));
    assertEquals(2, peer.connections());
  }

  @Test
  void aLinkThatCouldNotBeClearedIsNotConnectedUntilItCan() throws IOException {
    peer.close();
    assertThrows(LinkException.class, () -> link.clear(within(2000)));
    LinkClosedException e = assertThrows(LinkClosedException.class, () -> ask("A?"));
    assertSays(e, "lost the connection (not connected)");
  }

  @Test
  void closingFromAnotherThreadEndsAWait() {
    CompletableFuture<Received> reading =
        CompletableFuture.supplyAsync(() -> link.read(ByteBuffer.allocate(1), within(10_000)));
    link.close();
    CompletionException e = assertThrows(CompletionException.class, reading::join);
    assertInstanceOf(LinkClosedException.class, e.getCause());
    assertThrows(LinkClosedException.class, () -> link.clear(within(2000)));
  }

  @Test
  void anInterruptLeavesTheLinkOpen() {
    peer.answer("A?", "1");
    Thread.currentThread().interrupt();
    ask("A?");
    assertEquals(2, link.read(ByteBuffer.allocate(10), within(2000)).bytes());
    assertTrue(Thread.interrupted(), "the interrupt is kept for who handles it");
  }

  @Test
  void aRefusedConnectionSaysWhatToCheck() throws IOException {
    peer.close();
    LinkException e =
        assertThrows(
            LinkException.class, () -> ResourceName.parse(peer.resource()).open(within(2000)));
    assertSays(e, peer.port() + "::SOCKET cannot be reached (");
    assertSays(e, "check address and port");
  }

  @Test
  void anUnknownHostIsNamed() {
    // RFC 2606 2: no name ends in .invalid
    ResourceName nowhere = ResourceName.parse("TCPIP::scope.invalid::5025::SOCKET");
    LinkException e = assertThrows(LinkException.class, () -> nowhere.open(within(2000)));
    assertSays(e, "no host is known by the name 'scope.invalid'");
  }

  private void ask(String message) {
    link.write((message + "\n").getBytes(US_ASCII), within(2000));
  }

  private static Deadline within(long millis) {
    return Deadline.after(Duration.ofMillis(millis), Clock.system());
  }
}

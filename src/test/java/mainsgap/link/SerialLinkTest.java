package mainsgap.link;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A serial line through a pseudo-terminal, which has neither baud rate nor control wires. */
class SerialLinkTest {
  private Path folder;
  private LoopbackPeer peer;
  private SerialBridge bridge;
  private Link link;

  @BeforeAll
  static void needsSocat() {
    SerialBridge.assumeThere();
  }

  @BeforeEach
  void connect(@TempDir Path temporary) throws IOException {
    folder = temporary;
    peer = new LoopbackPeer();
    bridge = SerialBridge.to(peer.port(), folder, "port");
    link = ResourceName.parse(bridge.resource()).open(within(2000));
  }

  @AfterEach
  void close() throws IOException {
    link.close();
    bridge.close();
    peer.close();
  }

  @Test
  void aMessageGoesOutWholeAndItsAnswerComesBack() {
    peer.answer("*IDN?", "Loopback,Peer,0,1");
    ask("*IDN?");
    assertEquals("Loopback,Peer,0,1\n", text(18));
    assertFalse(link.marksMessageEnd());
    assertEquals(OptionalInt.empty(), link.statusByte(within(2000)));
  }

  @Test
  void everyByteGoesThroughAsItIs() {
    byte[] all = new byte[256];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    peer.answer("A?", LoopbackPeer.bytes(all));
    ask("A?");
    assertArrayEquals(all, bytes(256));
  }

  @Test
  void aReadTakesNoMoreThanItsBufferHoldsAndLosesNothing() {
    peer.answer("A?", "12345");
    ask("A?");
    assertEquals("123", text(3));
    assertEquals("45\n", text(3));
  }

  @Test
  void aSlowPeerIsWaitedFor() {
    peer.answer("A?", LoopbackPeer.oneByOne(LoopbackPeer.ascii("one by one\n")));
    ask("A?");
    assertEquals("one by one\n", text(11));
  }

  @Test
  void silenceEndsAtTheDeadline() {
    LinkTimeoutException e =
        assertThrows(
            LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), within(50)));
    assertEquals(bridge.resource() + " sent nothing in the time allowed", e.getMessage());
  }

  /** Its reads would wait for a first byte from then on, however long that takes. */
  @Test
  void silenceEndsWhereAnotherProgramChangesTheTerminal() throws IOException {
    bridge.changeTerminal("min", "1", "time", "0");
    assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), within(50)));
    peer.answer("A?", "1");
    ask("A?");
    assertEquals("1\n", text(2));
  }

  @Test
  void silenceEndsEvenOnAClockThatStandsStill() {
    Deadline deadline = Deadline.after(Duration.ofMillis(50), new ManualClock());
    assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), deadline));
  }

  @Test
  void aPeerThatTakesNothingEndsTheWriteAndTheClosing() throws IOException {
    try (ServerSocket deaf = new ServerSocket()) {
      deaf.setReceiveBufferSize(4096);
      deaf.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
      try (SerialBridge toDeaf = SerialBridge.to(deaf.getLocalPort(), folder, "deaf");
          Link blocked = ResourceName.parse(toDeaf.resource()).open(within(2000))) {
        byte[] moreThanAnyBuffer = new byte[32 << 20];
        LinkTimeoutException e =
            assertThrows(
                LinkTimeoutException.class, () -> blocked.write(moreThanAnyBuffer, within(300)));
        assertSays(e, "takes no more data");
      }
    }
  }

  @Test
  void anAdapterThatIsPulledOutEndsAReadAndAWrite() {
    CompletableFuture<Received> reading =
        CompletableFuture.supplyAsync(() -> link.read(ByteBuffer.allocate(1), within(10_000)));
    bridge.close();
    CompletionException e = assertThrows(CompletionException.class, reading::join);
    assertSays(assertInstanceOf(LinkClosedException.class, e.getCause()), "lost the serial port");
    assertThrows(LinkClosedException.class, () -> ask("A?"));
  }

  @Test
  void aPeerThatClosesEarlyIsSaidAndTheNextConnectionWorks() throws IOException {
    peer.answer("A?", LoopbackPeer.bytesThenClose(LoopbackPeer.ascii("par")));
    ask("A?");
    assertEquals("par", text(3));
    assertThrows(
        LinkClosedException.class, () -> link.read(ByteBuffer.allocate(1), within(10_000)));
    link.close();
    peer.answer("B?", "whole");
    try (SerialBridge again = SerialBridge.to(peer.port(), folder, "again");
        Link next = ResourceName.parse(again.resource()).open(within(2000))) {
      next.write("B?\n".getBytes(US_ASCII), within(2000));
      assertEquals("whole\n", new String(bytes(next, 6), US_ASCII));
    }
  }

  @Test
  void closingFromAnotherThreadEndsAWait() {
    CompletableFuture<Received> reading =
        CompletableFuture.supplyAsync(() -> link.read(ByteBuffer.allocate(1), within(10_000)));
    link.close();
    link.close();
    CompletionException e = assertThrows(CompletionException.class, reading::join);
    assertSays(assertInstanceOf(LinkClosedException.class, e.getCause()), "closed by this program");
    assertThrows(LinkClosedException.class, () -> ask("A?"));
    assertThrows(LinkClosedException.class, () -> link.clear(within(2000)));
  }

  @Test
  void whatIsClosedCanBeOpenedAgain() throws IOException {
    link.close();
    bridge.close();
    bridge = SerialBridge.to(peer.port(), folder, "port");
    link = ResourceName.parse(bridge.resource()).open(within(2000));
    peer.answer("A?", "1");
    ask("A?");
    assertEquals("1\n", text(2));
  }

  @Test
  void theLastMessageGoesOutBeforeTheClose() {
    ask("OFF");
    link.close();
    Deadline deadline = within(5000);
    while (peer.received().isEmpty() && !deadline.hasPassed()) {
      Clock.system().pause(Duration.ofMillis(5), new StopRequest());
    }
    assertEquals(List.of("OFF"), peer.received());
  }

  @Test
  void aRelayCanStillBeSwitchedWhileTheProgramEnds() throws IOException {
    link.close();
    bridge.close();
    bridge = SerialBridge.to(peer.port(), folder, "relay");
    Process ending =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                SerialAtTheEnd.class.getName(),
                bridge.resource())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("output").toFile())
            .start();
    assertEquals(0, ending.onExit().orTimeout(60, TimeUnit.SECONDS).join().exitValue());
    assertEquals(List.of("ON", "OFF"), peer.received(), Files.readString(folder.resolve("output")));
  }

  @Test
  void everyByteGoesOutAsItIs() {
    StringBuilder all = new StringBuilder();
    for (char c = 0; c < 256; c++) {
      all.append(c == '\n' ? "" : c);
    }
    peer.answer(all.toString(), "1");
    link.write((all + "\n").getBytes(ISO_8859_1), within(2000));
    assertEquals("1\n", text(2));
  }

  @Test
  void anInterruptLeavesTheLinkOpen() {
    peer.answer("A?", "1");
    Thread.currentThread().interrupt();
    ask("A?");
    assertEquals("1\n", text(2));
    assertTrue(Thread.interrupted(), "the interrupt is kept for who handles it");
  }

  @Test
  void clearDropsWhatIsStillComing() {
    peer.answer("OLD?", LoopbackPeer.oneByOne(LoopbackPeer.ascii("an old answer\n")));
    peer.answer("NEW?", "new");
    ask("OLD?");
    link.clear(within(2000));
    ask("NEW?");
    assertEquals("new\n", text(4));
    assertEquals(List.of("OLD?", "NEW?"), peer.received(), "nothing was sent for the clear");
  }

  @Test
  void anInstrumentThatNeverStopsSendingEndsTheClearWithASentence() {
    peer.answer(
        "FLOOD",
        client -> {
          while (true) {
            client.write(new byte[512]);
          }
        });
    ask("FLOOD");
    link.read(ByteBuffer.allocate(1), within(10_000));
    LinkTimeoutException e =
        assertThrows(LinkTimeoutException.class, () -> link.clear(within(300)));
    assertSays(e, "goes on sending what nobody wants any more");
  }

  @Test
  void messagesEndWithCrNlWhereTheNameSaysSo() throws IOException {
    try (SerialBridge other = SerialBridge.to(peer.port(), folder, "crlf")) {
      link.close();
      bridge.close(); // the peer serves one client at a time
      try (Link ended = ResourceName.parse(other.resource("19200,crlf")).open(within(2000))) {
        peer.answer("A?\r", "1");
        ended.write("A?\n".getBytes(US_ASCII), within(2000));
        ended.write("A?\r\n".getBytes(US_ASCII), within(2000));
        assertEquals("1\n1\n", new String(bytes(ended, 4), US_ASCII));
      }
    }
  }

  @Test
  void aPortThatIsNotThereIsNamedWithThoseThatAre() {
    ResourceName nowhere = ResourceName.parse("ASRL" + folder.resolve("none") + "::INSTR");
    LinkException e = assertThrows(LinkException.class, () -> nowhere.open(within(2000)));
    assertSays(e, "there is no serial port " + folder.resolve("none") + "; present: ");
  }

  @Test
  void whatIsNoSerialPortDoesNotOpen() {
    ResourceName file = ResourceName.parse("ASRL/etc/hostname::INSTR");
    LinkException e = assertThrows(LinkException.class, () -> file.open(within(2000)));
    assertSays(e, "does not open: is it a serial port");
  }

  @Test
  void aPortThatAnotherHoldsDoesNotOpenTwice() {
    ResourceName taken = ResourceName.parse(bridge.resource());
    assertSays(
        assertThrows(LinkException.class, () -> taken.open(within(2000))),
        "does not open: is it a serial port");
  }

  private void ask(String query) {
    link.write((query + "\n").getBytes(US_ASCII), within(2000));
  }

  private String text(int bytes) {
    return new String(bytes(bytes), US_ASCII);
  }

  private byte[] bytes(int count) {
    return bytes(link, count);
  }

  private static byte[] bytes(Link from, int count) {
    ByteBuffer into = ByteBuffer.allocate(count);
    while (into.hasRemaining()) {
      from.read(into, within(5000));
    }
    return into.array();
  }

  private static Deadline within(long millis) {
    return Deadline.after(Duration.ofMillis(millis), Clock.system());
  }
}

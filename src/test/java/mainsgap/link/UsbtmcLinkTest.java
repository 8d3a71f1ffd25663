package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import mainsgap.link.FakeUsbtmcKernel.Transfer;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The link over the kernel's driver, which is a fake: no instrument was at hand. */
class UsbtmcLinkTest {
  private static final ResourceName.Usb NAME = new ResourceName.Usb(0, 0x1234, 0x125, "SN1", 0);

  private final ManualClock clock = new ManualClock();
  private final FakeUsbtmcKernel kernel = new FakeUsbtmcKernel(clock);
  private Link link;

  @BeforeEach
  void open() {
    link = new UsbtmcLink(NAME, KernelUsbtmc.open(kernel, Path.of("/dev/usbtmc0"), NAME), clock);
  }

  @Test
  void aMessageIsOneWriteAndItsReplyEndsWithItsMark() {
    kernel.answers("Loopback,Peer,0,1\n");
    ask("*IDN?");
    ByteBuffer into = ByteBuffer.allocate(100);
    assertEquals(new Received(18, true), link.read(into, within(5000)));
    assertEquals("Loopback,Peer,0,1\n", new String(into.array(), 0, 18, US_ASCII));
    assertEquals(List.of("*IDN?\n"), kernel.written);
    assertTrue(link.marksMessageEnd());
  }

  @Test
  void aSmallBufferGetsTheReplyInPiecesAndTheEndWithTheLast() {
    kernel.answers("12345");
    ask("A?");
    assertEquals(new Received(3, false), link.read(ByteBuffer.allocate(3), within(5000)));
    assertEquals(new Received(2, true), link.read(ByteBuffer.allocate(3), within(5000)));
    assertEquals(1, kernel.reads);
  }

  @Test
  void aReplyInManyTransfersIsAskedForUntilItsEnd() {
    List<Transfer> oneByOne = new ArrayList<>();
    for (byte b : LoopbackPeer.ascii("slowly\n")) {
      oneByOne.add(new Transfer(new byte[] {b}, b == '\n'));
    }
    kernel.instrument = message -> oneByOne;
    ask("A?");
    assertEquals("slowly\n", message());
    assertEquals(7, kernel.reads);
  }

  @Test
  void anInstrumentIsNotAskedToTalkBeforeItHasSomethingToSay() {
    kernel.answers("late");
    kernel.silentLooks = 40;
    ask("A?");
    assertEquals("late", message());
    assertEquals(41, kernel.statusLooks);
    assertEquals(1, kernel.reads);
  }

  @Test
  void silenceEndsAtTheDeadlineWithoutARead() {
    kernel.answers("1");
    ask("A?");
    assertEquals("1", message());
    kernel.instrument = message -> List.of();
    ask("UNKNOWN?");
    Deadline deadline = within(5000);
    LinkTimeoutException e =
        assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), deadline));
    assertEquals(NAME + " sent or took nothing in the time allowed", e.getMessage());
    assertTrue(deadline.hasPassed());
    assertEquals(1, kernel.reads, "it was never made to talk");
  }

  @Test
  void silenceEndsEvenOnAClockThatStandsStill() {
    kernel.answers("1");
    ask("A?");
    assertEquals("1", message());
    Deadline deadline = Deadline.after(Duration.ofMillis(50), new ManualClock());
    assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), deadline));
  }

  @Test
  void anInstrumentWhoseStatusByteNeverSaysSoIsReadAfterHalfTheTime() {
    kernel.answers("1");
    kernel.keepsAvailability = false;
    ask("A?");
    assertEquals("1", message());
    int looks = kernel.statusLooks;
    ask("B?");
    assertEquals("1", message());
    assertEquals(looks, kernel.statusLooks, "and is never waited for again");
  }

  @Test
  void anInstrumentWithoutAStatusByteIsReadAtOnce() {
    kernel.answers("1");
    kernel.errnoOfStatus = FakeUsbtmcKernel.EPIPE;
    ask("A?");
    assertEquals("1", message());
    assertEquals(1, kernel.statusLooks);
    assertEquals(OptionalInt.empty(), link.statusByte(within(1000)));
    kernel.instrument = message -> List.of();
    ask("UNKNOWN?");
    Deadline deadline = within(5000);
    assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(1), deadline));
    assertTrue(deadline.hasPassed());
  }

  @Test
  void theStatusByteIsThatOfTheInstrument() {
    assertEquals(OptionalInt.of(0x80), link.statusByte(within(1000)));
    kernel.answers("1");
    ask("A?");
    assertEquals(OptionalInt.of(0x90), link.statusByte(within(1000)));
  }

  @Test
  void anEmptyTransferBeforeTheReplyIsPassedOver() {
    kernel.instrument =
        message -> List.of(new Transfer(new byte[0], true), new Transfer(new byte[] {'1'}, true));
    ask("A?");
    assertEquals("1", message());
  }

  @Test
  void aKernelThatCannotTellTheEndTakesLessThanAskedForAsTheEnd() {
    kernel.unknownRequests.add(KernelUsbtmc.MSG_IN_ATTR);
    byte[] full = new byte[64 * 1024];
    kernel.instrument =
        message -> List.of(new Transfer(full, false), new Transfer(new byte[] {'1'}, true));
    ask("A?");
    assertEquals(full.length + 1, message().length());
  }

  @Test
  void aKernelWithOneTimeOutForAllServesToo() {
    kernel.unknownRequests.add(KernelUsbtmc.SET_TIMEOUT);
    kernel.answers("1");
    ask("A?");
    assertEquals("1", message());
  }

  @Test
  void theKernelWaitsNoLongerThanTheDeadlineButAtLeastItsShortest() {
    link.clear(within(1234));
    link.clear(within(5));
    assertEquals(List.of(1234, KernelUsbtmc.SHORTEST_MILLIS), kernel.timeouts);
    assertEquals(2, kernel.clears);
  }

  @Test
  void clearForgetsWhatWasUnderWay() {
    kernel.instrument =
        message ->
            List.of(
                new Transfer(new byte[] {'o', 'l'}, false), new Transfer(new byte[] {'d'}, true));
    ask("OLD?");
    link.read(ByteBuffer.allocate(1), within(5000));
    link.clear(within(2000));
    kernel.answers("new");
    ask("NEW?");
    assertEquals("new", message());
  }

  @Test
  void anInstrumentThatTakesNothingEndsTheWrite() {
    kernel.errnoOfWrites = FakeUsbtmcKernel.ETIMEDOUT;
    Deadline deadline = within(3000);
    assertThrows(LinkTimeoutException.class, () -> link.write(new byte[10], deadline));
    assertTrue(deadline.hasPassed());
  }

  @Test
  void anInstrumentThatIsUnpluggedIsSaidOnEveryWay() {
    kernel.errnoOfAll = FakeUsbtmcKernel.ENODEV;
    assertGone(() -> ask("A?"));
    assertGone(() -> link.read(ByteBuffer.allocate(1), within(1000)));
    assertGone(() -> link.statusByte(within(1000)));
    assertGone(() -> link.clear(within(1000)));
  }

  @Test
  void anUnpluggingInMidReplyIsSaid() {
    kernel.instrument = message -> List.of(new Transfer(new byte[] {'1'}, false));
    ask("A?");
    link.read(ByteBuffer.allocate(10), within(1000));
    kernel.errnoOfAll = FakeUsbtmcKernel.ENODEV;
    assertGone(() -> link.read(ByteBuffer.allocate(1), within(1000)));
  }

  @Test
  void aStallSaysThatTheInstrumentHasToBeClearedAndThenItWorks() {
    kernel.errnoOfWrites = FakeUsbtmcKernel.EPIPE;
    assertSays(assertThrows(LinkException.class, () -> ask("A?")), "has to be cleared first");
    kernel.errnoOfWrites = 0;
    link.clear(within(1000));
    kernel.answers("1");
    ask("A?");
    assertEquals("1", message());
  }

  @Test
  void aDisturbedTransferSaysWhatToDo() {
    kernel.errnoOfWrites = FakeUsbtmcKernel.EPROTO;
    assertSays(
        assertThrows(LinkException.class, () -> ask("A?")),
        NAME + ": the USB transfer failed (error 71); if that comes again, switch the instrument");
  }

  @Test
  void moreBytesThanWereAskedForAreRefused() {
    kernel.answers("1");
    kernel.extraBytes = 1 << 20;
    ask("A?");
    assertSays(
        assertThrows(LinkException.class, () -> link.read(ByteBuffer.allocate(10), within(1000))),
        "1048577 bytes came where 65536 were asked for");
  }

  @Test
  void closingDuringAReadEndsItAndClosesTheFileOnce() {
    kernel.answers("1");
    kernel.duringRead = () -> closeFromAnotherThread();
    ask("A?");
    LinkClosedException e =
        assertThrows(
            LinkClosedException.class, () -> link.read(ByteBuffer.allocate(1), within(1000)));
    assertSays(e, "was closed by this program");
    assertEquals(1, kernel.closed, "and not while the kernel was reading");
    link.close();
    assertEquals(1, kernel.closed);
    assertThrows(LinkClosedException.class, () -> link.clear(within(1000)));
  }

  @Test
  void anInterruptLeavesTheLinkOpen() {
    kernel.answers("1");
    kernel.silentLooks = 3;
    Thread.currentThread().interrupt();
    ask("A?");
    assertEquals("1", message());
    assertTrue(Thread.interrupted(), "the interrupt is kept for who handles it");
  }

  @Test
  void aNodeThatMayNotBeOpenedSaysHowItMay() {
    kernel.errnoOfAll = 13;
    LinkException e =
        assertThrows(
            LinkException.class, () -> KernelUsbtmc.open(kernel, Path.of("/dev/usbtmc0"), NAME));
    assertSays(e, NAME + ": /dev/usbtmc0 does not open: you may not use it; as root, add the line");
  }

  private void closeFromAnotherThread() {
    Thread other = new Thread(link::close);
    other.start();
    assertTrue(Joined.within(other, Duration.ofSeconds(10)), "closing waits for the kernel");
    assertEquals(0, kernel.closed);
  }

  private void assertGone(org.junit.jupiter.api.function.Executable use) {
    assertSays(assertThrows(LinkClosedException.class, use), NAME + " is gone (unplugged)");
  }

  private void ask(String query) {
    link.write((query + "\n").getBytes(US_ASCII), within(2000));
  }

  private String message() {
    ByteBuffer into = ByteBuffer.allocate(1 << 20);
    while (!link.read(into, within(5000)).messageEnded()) {
      assertTrue(into.hasRemaining());
    }
    return new String(into.array(), 0, into.position(), US_ASCII);
  }

  private Deadline within(long millis) {
    return Deadline.after(Duration.ofMillis(millis), clock);
  }
}

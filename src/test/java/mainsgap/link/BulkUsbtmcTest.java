package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.UnaryOperator;
import mainsgap.link.FakeUsbInstrument.Part;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Our own framing, against an instrument that is a fake. */
class BulkUsbtmcTest {
  private static final int MOST = 1024;

  private final FakeUsbInstrument instrument = new FakeUsbInstrument();
  private final ManualClock clock = new ManualClock();
  private final byte[] into = new byte[MOST];

  @Test
  void aMessageAndARequestGoOutAndTheReplyComesIn() throws UsbFault {
    instrument.answers("Loopback,Peer,0,1\n");
    BulkUsbtmc device = device();
    device.send("*IDN?\n".getBytes(US_ASCII), 100);
    assertEquals(new Received(18, true), device.receive(into, 100));
    assertEquals("Loopback,Peer,0,1\n", new String(into, 0, 18, US_ASCII));
    assertEquals(List.of("*IDN?\n"), instrument.messages);
    assertEquals(2, instrument.framesOut.size());
  }

  /** 52 bytes with the header of 12 fill a packet of 64. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 51, 52, 53, 115, 116, 117, 1023, 1024, 3000})
  void everyLengthComesWholeWithOrWithoutAnEmptyPacketBehindIt(int length) throws UsbFault {
    byte[] data = new byte[length];
    new Random(length).nextBytes(data);
    instrument.instrument = message -> List.of(new Part(data, true));
    for (boolean emptyPackets : new boolean[] {false, true, true, false}) {
      instrument.endsTransfersWithEmptyPackets = emptyPackets;
      BulkUsbtmc device = device();
      for (int again = 0; again < 2; again++) {
        assertArrayEquals(data, exchange(device));
      }
    }
  }

  @Test
  void aWaitThatEndedGoesOnWithTheSameRequest() throws UsbFault {
    BulkUsbtmc device = device();
    device.send("A?\n".getBytes(US_ASCII), 100);
    assertEquals(
        UsbFault.Kind.TIMEOUT,
        assertThrows(UsbFault.class, () -> device.receive(into, 100)).kind());
    instrument.parts.add(new Part(new byte[] {'1'}, true));
    assertEquals(new Received(1, true), device.receive(into, 100));
    assertEquals(2, instrument.framesOut.size(), "the message and one request");
  }

  @Test
  void aNewMessageAfterAWaitThatEndedClearsFirst() throws UsbFault {
    BulkUsbtmc device = device();
    device.send("A?\n".getBytes(US_ASCII), 100);
    assertThrows(UsbFault.class, () -> device.receive(into, 100));
    instrument.answers("new");
    device.send("B?\n".getBytes(US_ASCII), 100);
    assertEquals(1, instrument.clears);
    assertEquals(new Received(3, true), device.receive(into, 100));
  }

  @Test
  void aTransferThatEndsBeforeWhatItsHeaderClaimsIsAFault() throws UsbFault {
    lying(frame -> Arrays.copyOf(frame, 20));
    assertFault("the transfer ended with 8 of the 10 bytes that its header claims");
  }

  @Test
  void aTransferThatFillsItsPacketAndThenStopsIsWaitedForAndIsNoLoop() throws UsbFault {
    instrument.instrument =
        message -> List.of(new Part(new byte[300], true, frame -> Arrays.copyOf(frame, 64)));
    BulkUsbtmc device = device();
    device.send("A?\n".getBytes(US_ASCII), 100);
    assertEquals(
        UsbFault.Kind.TIMEOUT,
        assertThrows(UsbFault.class, () -> device.receive(into, 100)).kind());
  }

  @Test
  void aHeaderThatIsCutOffIsAFault() throws UsbFault {
    lying(frame -> Arrays.copyOf(frame, 7));
    assertFault("the transfer ended with a header of 7 bytes where 12 should be");
  }

  @Test
  void theAnswerToAnotherRequestIsAFault() throws UsbFault {
    lying(
        frame -> {
          frame[1]++;
          frame[2]--;
          return frame;
        });
    assertFault("it answered the request 3 where 2 was asked");
  }

  @Test
  void aTagWithoutItsInverseIsAFault() throws UsbFault {
    lying(
        frame -> {
          frame[2] = 0;
          return frame;
        });
    assertFault("the tag 2 of its answer and its inverse do not fit");
  }

  @Test
  void aClaimOfMoreThanWasAskedForIsAFaultAndNothingIsReadForIt() throws UsbFault {
    lying(
        frame -> {
          frame[7] = 0x7F;
          return frame;
        });
    assertFault("claims 2130706442 bytes where at most 1024 were asked for");
  }

  @Test
  void theStatusByteComesWithTheAnswer() throws UsbFault {
    BulkUsbtmc device = device();
    for (int i = 0; i < 300; i++) {
      assertEquals(OptionalInt.of(0x80), device.statusByte(100));
    }
  }

  @Test
  void theStatusByteComesOverTheInterruptEndpointPastRequestsForService() throws UsbFault {
    instrument.hasInterrupt = true;
    BulkUsbtmc device = device();
    assertEquals(OptionalInt.of(0x80), device.statusByte(100));
    assertEquals(OptionalInt.of(0x80), device.statusByte(100));
  }

  @Test
  void aStatusByteThatOthersAskedForIsAFault() {
    instrument.statusTagShift = 1;
    BulkUsbtmc device = device();
    assertSays(
        assertThrows(UsbFault.class, () -> device.statusByte(100)),
        "it answered the status request 3 where 2 was asked");
  }

  @Test
  void anInstrumentWithoutUsb488HasNoStatusByte() throws UsbFault {
    instrument.usb488 = false;
    assertEquals(OptionalInt.empty(), device().statusByte(100));
  }

  @Test
  void anInstrumentThatRefusesTheStatusByteIsNotAskedAgain() throws UsbFault {
    instrument.controlFault = UsbFault.Kind.STALLED;
    BulkUsbtmc device = device();
    assertEquals(OptionalInt.empty(), device.statusByte(100));
    instrument.controlFault = null;
    assertEquals(OptionalInt.empty(), device.statusByte(100));
  }

  @Test
  void aClearWaitsUntilItIsDoneAndReadsWhatIsLeft() throws UsbFault {
    instrument.pendingClears = 3;
    instrument.clearHoldsData = true;
    device().clear(1000);
    assertEquals(1, instrument.clears);
    assertEquals(1, instrument.haltsCleared);
  }

  @Test
  void aClearThatNeverEndsIsGivenUp() {
    instrument.pendingClears = Integer.MAX_VALUE;
    UsbFault fault = assertThrows(UsbFault.class, () -> device().clear(1000));
    assertEquals(UsbFault.Kind.TIMEOUT, fault.kind());
  }

  @Test
  void aClearThatIsRefusedSaysSo() {
    instrument.statusOfClear = (byte) 0x80;
    assertSays(
        assertThrows(UsbFault.class, () -> device().clear(1000)),
        "it refused a device clear with the status 128");
  }

  private void lying(UnaryOperator<byte[]> lie) {
    instrument.instrument = message -> List.of(new Part(new byte[10], true, lie));
  }

  private void assertFault(String said) throws UsbFault {
    BulkUsbtmc device = device();
    device.send("A?\n".getBytes(US_ASCII), 100);
    UsbFault fault = assertThrows(UsbFault.class, () -> device.receive(into, 100));
    assertEquals(UsbFault.Kind.OTHER, fault.kind());
    assertSays(fault, said);
  }

  private byte[] exchange(BulkUsbtmc device) throws UsbFault {
    device.send("A?\n".getBytes(US_ASCII), 100);
    byte[] all = new byte[0];
    while (true) {
      Received news = device.receive(into, 100);
      int before = all.length;
      all = Arrays.copyOf(all, before + news.bytes());
      System.arraycopy(into, 0, all, before, news.bytes());
      if (news.messageEnded()) {
        return all;
      }
    }
  }

  private BulkUsbtmc device() {
    return new BulkUsbtmc(instrument, MOST, clock);
  }
}

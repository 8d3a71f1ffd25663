package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.OptionalInt;
import mainsgap.link.FakeLibusb.Plugged;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.Test;

/** libusb is a fake here: neither it nor an instrument was at hand. */
class LibusbBusTest {
  private final FakeLibusb libusb = new FakeLibusb();
  private final Plugged other = new Plugged(0x1D6B, 2, "hub");
  private final Plugged twin = new Plugged(0x1234, 0x125, "SN1");
  private final Plugged meant = new Plugged(0x1234, 0x125, "SN2");
  private final ManualClock clock = new ManualClock();

  LibusbBusTest() {
    libusb.devices.add(other);
    libusb.devices.add(twin);
    libusb.devices.add(meant);
  }

  @Test
  void theOneThatIsMeantIsOpenedAndAnswers() {
    meant.instrument.answers("here\n");
    try (Link link = link("SN2")) {
      link.write("*IDN?\n".getBytes(US_ASCII), within(1000));
      ByteBuffer into = ByteBuffer.allocate(100);
      assertEquals(new Received(5, true), link.read(into, within(1000)));
      assertEquals(OptionalInt.of(0x80), link.statusByte(within(1000)));
      link.clear(within(1000));
      assertEquals(1, meant.instrument.clears);
      assertEquals(1, meant.instrument.haltsCleared);
    }
    assertEquals(0, other.opened, "a device of another model is left alone");
    assertEquals(1, twin.closed);
    assertEquals(1, meant.closed);
    assertEquals(1, meant.released);
    assertEquals(0, libusb.contexts);
    assertEquals(0, libusb.lists);
  }

  @Test
  void anInstrumentThatIsUnpluggedIsSaid() {
    try (Link link = link("SN2")) {
      meant.instrument.gone = true;
      assertSays(
          assertThrows(LinkClosedException.class, () -> link.write(new byte[1], within(1000))),
          "is gone (unplugged)");
    }
  }

  @Test
  void oneThatIsNotThereSaysWhatToUseInstead() {
    assertRefused("SN3", "no such instrument is plugged in; or use the instrument's network link");
    assertEquals(1, twin.closed);
    assertEquals(1, meant.closed);
  }

  @Test
  void oneWithoutASerialNumberIs0() {
    libusb.devices.add(new Plugged(0x1234, 0x125, ""));
    link("0").close();
  }

  @Test
  void oneWithoutADriverThatServesSaysSo() {
    meant.openError = LibusbFault.NOT_SUPPORTED;
    assertRefused("SN2", "it has no driver that lets programs reach it (on Windows, WinUSB");
  }

  @Test
  void oneThatAnotherHoldsSaysSo() {
    meant.claimError = LibusbFault.BUSY;
    assertRefused("SN2", "another program or a driver of the system holds it");
    assertEquals(1, meant.closed);
  }

  @Test
  void oneThatIsNoInstrumentSaysSo() {
    meant.configuration = "09020900010100803200";
    assertRefused("SN2", "its interface 0 is not one of USBTMC");
  }

  @Test
  void aLibraryThatDoesNotStartSaysSo() {
    libusb.initError = -99;
    assertRefused("SN2", "libusb does not start (error -99)");
  }

  private void assertRefused(String serial, String why) {
    assertSays(
        assertThrows(LinkException.class, () -> link(serial)),
        name(serial) + " does not open through libusb: ",
        why,
        "TCPIP::host::5025::SOCKET");
    assertEquals(0, libusb.contexts);
    assertEquals(0, libusb.lists);
  }

  private Link link(String serial) {
    LibusbPipes pipes = new LibusbBus(libusb, name(serial)).open();
    BulkUsbtmc device = new BulkUsbtmc(pipes, UsbtmcLink.BUFFER_BYTES, clock);
    return new UsbtmcLink(name(serial), device, clock);
  }

  private static ResourceName.Usb name(String serial) {
    return new ResourceName.Usb(0, 0x1234, 0x125, serial, 0);
  }

  private Deadline within(long millis) {
    return Deadline.after(Duration.ofMillis(millis), clock);
  }
}

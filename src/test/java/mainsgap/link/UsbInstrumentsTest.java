package mainsgap.link;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A tree that is built as Linux builds {@code /sys}, with invented devices. */
class UsbInstrumentsTest {
  private Path devices;
  private Path list;

  @BeforeEach
  void system(@TempDir Path temporary) throws IOException {
    devices = Files.createDirectories(temporary.resolve("devices/usb1"));
    list = Files.createDirectories(temporary.resolve("class/usbmisc"));
  }

  @Test
  void eachInstrumentHasItsNameAndItsNode() throws IOException {
    plug("usbtmc10", "1-3", "1234", "0126", "Z 9", "01");
    plug("usbtmc2", "1-2", "1234", "0125", "SN1", "00");
    plug("lp0", "1-1", "04aa", "1111", "P", "00");
    List<UsbInstruments.Present> present = UsbInstruments.present(list);
    assertEquals(
        List.of(
            new UsbInstruments.Present(
                new ResourceName.Usb(0, 0x1234, 0x0125, "SN1", 0),
                Path.of("/dev/usbtmc2"),
                "Invented Works Wave 2"),
            new UsbInstruments.Present(
                new ResourceName.Usb(0, 0x1234, 0x0126, "Z 9", 1),
                Path.of("/dev/usbtmc10"),
                "Invented Works Wave 2")),
        present);
    for (UsbInstruments.Present one : present) {
      assertEquals(one.resource(), ResourceName.parse(one.resource().toString()));
    }
  }

  @Test
  void anInstrumentWithoutASerialNumberHas0() throws IOException {
    plug("usbtmc0", "1-2", "1234", "0125", null, "00");
    assertEquals("0", UsbInstruments.present(list).get(0).resource().serial());
  }

  @Test
  void oneThatIsUnpluggedMeanwhileIsLeftOut() throws IOException {
    plug("usbtmc0", "1-2", "1234", "0125", "SN1", "00");
    Files.delete(devices.resolve("1-2/idVendor"));
    Files.createSymbolicLink(
        Files.createDirectory(list.resolve("usbtmc1")).resolve("device"), Path.of("gone"));
    assertEquals(List.of(), UsbInstruments.present(list));
  }

  @Test
  void aSystemWithoutTheDriverHasNone() {
    assertEquals(List.of(), UsbInstruments.present(list.resolve("nothing")));
  }

  @Test
  void theOneThatIsMeantIsChosenByItsNumbersAndNotByTheBoard() throws IOException {
    plug("usbtmc0", "1-2", "1234", "0125", "SN1", "00");
    plug("usbtmc1", "1-3", "1234", "0125", "SN2", "00");
    List<UsbInstruments.Present> present = UsbInstruments.present(list);
    assertEquals(
        Path.of("/dev/usbtmc1"),
        UsbLinks.choose(new ResourceName.Usb(3, 0x1234, 0x125, "SN2", 0), present).node());
    LinkException e =
        assertThrows(
            LinkException.class,
            () -> UsbLinks.choose(new ResourceName.Usb(0, 0x1234, 0x125, "SN3", 0), present));
    assertSays(
        e,
        "USB0::0x1234::0x0125::SN3::0::INSTR is not plugged in",
        "present: USB0::0x1234::0x0125::SN1::0::INSTR, USB0::0x1234::0x0125::SN2::0::INSTR");
  }

  private void plug(
      String node,
      String place,
      String vendor,
      String product,
      @org.jspecify.annotations.Nullable String serial,
      String interfaceNumber)
      throws IOException {
    Path device = Files.createDirectories(devices.resolve(place));
    Path usbInterface = Files.createDirectories(device.resolve(place + ":1.0"));
    Files.writeString(device.resolve("idVendor"), vendor + "\n");
    Files.writeString(device.resolve("idProduct"), product + "\n");
    Files.writeString(device.resolve("manufacturer"), "Invented Works\n");
    Files.writeString(device.resolve("product"), "Wave 2\n");
    if (serial != null) {
      Files.writeString(device.resolve("serial"), serial + "\n");
    }
    Files.writeString(usbInterface.resolve("bInterfaceNumber"), interfaceNumber + "\n");
    Path entry = Files.createDirectories(usbInterface.resolve("usbmisc").resolve(node));
    Files.createSymbolicLink(entry.resolve("device"), Path.of("../.."));
    Files.createSymbolicLink(list.resolve(node), entry);
  }
}

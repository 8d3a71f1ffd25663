package mainsgap.link;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SerialPortsTest {

  /** Common practice of the systems. */
  @ParameterizedTest
  @CsvSource({
    "1, Linux, /dev/ttyS0",
    "3, Windows 11, COM3",
    "COM7, Windows 11, COM7",
    "ttyUSB0, Linux, /dev/ttyUSB0",
    "/dev/cu.usbserial-1, Mac OS X, /dev/cu.usbserial-1",
  })
  void aPortIsWhereTheSystemKeepsIt(String port, String system, String path) {
    assertEquals(path, SerialPorts.path(new ResourceName.Serial(port), system));
  }

  @Test
  void aNumberMeansNothingWhereTheSystemHasNone() {
    ResourceName.Serial name = new ResourceName.Serial("1");
    assertSays(
        assertThrows(LinkException.class, () -> SerialPorts.path(name, "Mac OS X")),
        "ASRL1::INSTR: this system does not number its ports");
  }

  @Test
  void thePortsThatAreThereHaveResourceNamesThatCanBeReadBack() {
    for (SerialPorts.Present found : SerialPorts.present()) {
      assertEquals(found.resource(), ResourceName.parse(found.resource().toString()));
    }
  }

  @Test
  void aLineCarriesACharacterInTenBitTimesAtStandardSettings() {
    assertEquals(960, SerialSettings.standard().bytesPerSecond());
    SerialSettings slow = ((ResourceName.Serial) ResourceName.parse("ASRL1,110,7E2")).settings();
    assertEquals(10, slow.bytesPerSecond());
  }
}

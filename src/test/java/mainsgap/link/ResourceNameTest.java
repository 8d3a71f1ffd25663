package mainsgap.link;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import mainsgap.link.ResourceName.Hislip;
import mainsgap.link.ResourceName.Serial;
import mainsgap.link.ResourceName.TcpSocket;
import mainsgap.link.ResourceName.Usb;
import mainsgap.link.ResourceName.Vxi11;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The forms of VPP-4.3; the serial path and the brackets are common practice. */
class ResourceNameTest {

  @ParameterizedTest
  @CsvSource({
    "TCPIP0::192.0.2.10::5025::SOCKET, TCPIP0::192.0.2.10::5025::SOCKET",
    "tcpip::scope.local::5555::socket, TCPIP0::scope.local::5555::SOCKET",
    "TCPIP2::[fe80::1%eth0]::5025::SOCKET, TCPIP2::[fe80::1%eth0]::5025::SOCKET",
    "TCPIP::[::1]::5025::SOCKET, TCPIP0::[::1]::5025::SOCKET",
    "TCPIP0::192.0.2.10::INSTR, TCPIP0::192.0.2.10::inst0::INSTR",
    "TCPIP::192.0.2.10, TCPIP0::192.0.2.10::inst0::INSTR",
    "'TCPIP::192.0.2.10::gpib0,9::INSTR', 'TCPIP0::192.0.2.10::gpib0,9::INSTR'",
    "'TCPIP::192.0.2.10::inst0,1025', 'TCPIP0::192.0.2.10::inst0,1025::INSTR'",
    "TCPIP::scope.local::hislip0::INSTR, TCPIP0::scope.local::hislip0::INSTR",
    "'TCPIP::scope.local::hislip0,4881', 'TCPIP0::scope.local::hislip0,4881::INSTR'",
    "USB0::0x1234::0x0125::SN1::INSTR, USB0::0x1234::0x0125::SN1::0::INSTR",
    "USB::4660::293::SN 1::2, USB0::0x1234::0x0125::SN 1::2::INSTR",
    "ASRL1::INSTR, ASRL1::INSTR",
    "ASRL/dev/ttyUSB0::INSTR, ASRL/dev/ttyUSB0::INSTR",
    "'ASRL/dev/ttyUSB0,115200,8N1::INSTR', 'ASRL/dev/ttyUSB0,115200::INSTR'",
    "'asrlCOM4,RTS-CTS, 7e2,19200,crlf', 'ASRLCOM4,19200,7E2,rts-cts,crlf::INSTR'",
    "'ASRL2,9600,none,nl::INSTR', ASRL2::INSTR",
  })
  void everyFormIsReadAndWrittenInFull(String name, String inFull) {
    assertEquals(inFull, ResourceName.parse(name).toString());
    assertEquals(ResourceName.parse(name), ResourceName.parse(inFull));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"TCPIP::h::inst\n0::INSTR", "USB::1::2::S\tN::INSTR", "ASRL/dev/tty\u0007::INSTR"})
  void aControlCharacterIsRefusedAndNotRepeated(String name) {
    LinkException refused = assertThrows(LinkException.class, () -> ResourceName.parse(name));
    String sentence = String.valueOf(refused.getMessage());
    assertTrue(sentence.startsWith("the resource name has a control character"), sentence);
    assertTrue(sentence.chars().noneMatch(Character::isISOControl), sentence);
  }

  @Test
  void eachKindIsARecordOfItsOwn() {
    assertEquals(new TcpSocket(0, "::1", 5025), ResourceName.parse("TCPIP::[::1]::5025::SOCKET"));
    assertEquals(new Vxi11(1, "h", "inst3"), ResourceName.parse("TCPIP1::h::inst3"));
    assertEquals(new Vxi11(0, "h", "inst0", 1025), ResourceName.parse("TCPIP::h::inst0,1025"));
    assertEquals(new Hislip(0, "h", "hislip1", 4880), ResourceName.parse("TCPIP::h::hislip1"));
    assertEquals(
        new Usb(0, 0x1234, 0x0125, "SN1", 0), ResourceName.parse("USB::0x1234::0x0125::SN1"));
    assertEquals(new Serial("COM3"), ResourceName.parse("ASRLCOM3"));
    assertEquals(
        new Serial(
            "COM3",
            new SerialSettings(
                4800,
                7,
                SerialSettings.Parity.ODD,
                1,
                SerialSettings.Flow.RTS_CTS,
                SerialSettings.Terminator.CR_NL)),
        ResourceName.parse("ASRLCOM3,4800,7O1,rts-cts,crlf"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | begins with '' | TCPIP::host::port::SOCKET",
        "GPIB0::9::INSTR | begins with 'GPIB0' | TCPIP::host::port::SOCKET",
        "192.0.2.10:5025 | begins with '192.0.2.10:5025' | TCPIP::host::port::SOCKET",
        "TCPIP::192.0.2.10::SOCKET | has too few parts | such as TCPIP::192.0.2.10::5025::SOCKET",
        "TCPIP::fe80::1::5025::SOCKET | has too many parts | an IPv6 address goes in brackets",
        "TCPIP::h::x::SOCKET | has the port 'x' | a number from 0 to 65535",
        "TCPIP::h::65536::SOCKET | has the port '65536' | a number from 0 to 65535",
        "TCPIP::h::99999999999::SOCKET | has the port '99999999999' | a number from 0 to 65535",
        "TCPIP::h::0::SOCKET | has the port 0 | 1 to 65535",
        "TCPIP::::5025::SOCKET | has the host '' | an IPv6 address in brackets",
        "TCPIP::a b::5025::SOCKET | has the host 'a b' | a name, an IPv4 address",
        "TCPIP | has too few parts | TCPIP::host::port::SOCKET",
        "TCPIP::h::::INSTR | has an empty device name | TCPIP::host::device::INSTR",
        "TCPIP::h::inst0,x::INSTR | has the port 'x' | a number from 0 to 65535",
        "USB::0x1234::0x0125::INSTR | has too few parts | such as USB::0x1234",
        "USB::0xG::0x0125::SN1 | has the vendor '0xG' | a number from 0 to 65535",
        "USB::0x1::0x10000::SN1 | has the product '0x10000' | a number from 0 to 65535",
        "ASRL::INSTR | has an empty serial port | ASRLport::INSTR",
        "ASRL,9600::INSTR | has an empty serial port | ASRLport::INSTR",
        "ASRL1,fast::INSTR | has the serial setting 'fast' | a baud rate from 50 to 12000000, data",
        "ASRL1,9::INSTR | has the serial setting '9' | a baud rate from 50",
        "ASRL1,99999999::INSTR | has the serial setting '99999999' | a baud rate from 50",
        "ASRL1,8N3::INSTR | has the serial setting '8N3' | with parity and stop bits such as 8N1",
        "ASRL1,::INSTR | has the serial setting '' | a baud rate",
        "ASRL1,xon-xoff::INSTR | has the serial setting 'xon-xoff' | rts-cts or none, set alike",
        "ASRL1::2::INSTR | has too many parts | such as ASRL1::INSTR",
      })
  void whatIsWrongIsNamedWithWhatIsAllowed(String name, String found, String allowed) {
    LinkException e = assertThrows(LinkException.class, () -> ResourceName.parse(name));
    assertSays(e, "the resource name '" + name + "' " + found, "; allowed: ", allowed);
  }
}

package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import mainsgap.bench.FoundInstrument.Source;
import mainsgap.link.Announcement.Told;
import mainsgap.link.ResourceName;
import org.junit.jupiter.api.Test;

/** Which links are one instrument's. */
class OfferedInstrumentTest {
  private static final Told FOUR = new Told("Invented Bench", "Scope 4", "17", "1.0");
  private static final Told FIVE = new Told("Invented Bench", "Scope 5", "18", "1.0");

  @Test
  void theLinksOfOneInstrumentStandTogetherTheRawSocketFirst() {
    assertEquals(
        List.of(
            "TCPIP0::192.0.2.10::5025::SOCKET TCPIP0::192.0.2.10::hislip0::INSTR"
                + " TCPIP0::192.0.2.10::inst0::INSTR"),
        grouped(
            offer("TCPIP::192.0.2.10::inst0::INSTR", "S4", "192.0.2.10", FOUR),
            offer("TCPIP::192.0.2.10::hislip0::INSTR", "S4", "192.0.2.10", Offer.NOTHING),
            offer("TCPIP::192.0.2.10::5025::SOCKET", "S4", "192.0.2.10", Offer.NOTHING)));
  }

  @Test
  void oneSpecimenAtTwoAddressesIsOneInstrument() {
    assertEquals(
        List.of("TCPIP0::192.0.2.10::5025::SOCKET TCPIP0::198.51.100.4::5025::SOCKET"),
        grouped(
            offer("TCPIP::192.0.2.10::5025::SOCKET", "S4", "192.0.2.10", FOUR),
            offer("TCPIP::198.51.100.4::5025::SOCKET", "S4 (2)", "198.51.100.4", FOUR)));
  }

  @Test
  void twoInstrumentsBehindOneAddressStayTwo() {
    assertEquals(
        List.of("TCPIP0::192.0.2.10::5025::SOCKET", "TCPIP0::192.0.2.10::5026::SOCKET"),
        grouped(
            offer("TCPIP::192.0.2.10::5025::SOCKET", "S4", "192.0.2.10", FOUR),
            offer("TCPIP::192.0.2.10::5026::SOCKET", "S5", "192.0.2.10", FIVE)));
  }

  @Test
  void anAnswerToTheBroadcastJoinsWhatIsAnnouncedThereAndIsListedOnce() {
    Offer announced = offer("TCPIP::192.0.2.10::inst0::INSTR", "S4", "192.0.2.10", FOUR);
    Offer answered = Offer.ofBroadcast(new ResourceName.Vxi11(0, "192.0.2.10", "inst0"));
    Offer other = Offer.ofBroadcast(new ResourceName.Vxi11(0, "192.0.2.11", "inst0"));
    assertEquals(
        List.of("TCPIP0::192.0.2.10::inst0::INSTR", "TCPIP0::192.0.2.11::inst0::INSTR"),
        grouped(announced, answered, other));
  }

  @Test
  void portsOfThisComputerAreNeverPutTogether() {
    assertEquals(
        List.of("ASRL/dev/ttyS0::INSTR", "ASRL/dev/ttyS1::INSTR"),
        grouped(
            Offer.ofPort(ResourceName.parse("ASRL/dev/ttyS0::INSTR"), Source.SERIAL, "port"),
            Offer.ofPort(ResourceName.parse("ASRL/dev/ttyS1::INSTR"), Source.SERIAL, "port")));
  }

  private static Offer offer(String resource, String name, String host, Told told) {
    return new Offer(ResourceName.parse(resource), Source.ANNOUNCED, name, host, told);
  }

  private static List<String> grouped(Offer... offers) {
    return OfferedInstrument.of(Arrays.asList(offers)).stream()
        .map(one -> String.join(" ", one.resources().stream().map(Object::toString).toList()))
        .toList();
  }
}

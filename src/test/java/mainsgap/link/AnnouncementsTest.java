package mainsgap.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.time.Duration;
import java.util.List;
import mainsgap.link.Announcement.Told;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.junit.jupiter.api.Test;

/** Announcements by bytes of our own (RFC 6762, RFC 6763), over real multicast on loopback. */
class AnnouncementsTest {
  private static final InetAddress OWN = InetAddress.getLoopbackAddress();
  private static final Duration TIME = Duration.ofMillis(2500);

  @Test
  void eachServiceBecomesAResourceWithTheAnnouncedPort() throws IOException {
    try (MulticastAnnouncer neighbour = new MulticastAnnouncer(OWN)) {
      neighbour
          .having("_scpi-raw._tcp", "Invented Scope 4 (a.b)", 5555, OWN, "txtvers=1", "Model=S4")
          .having("_hislip._tcp", "Invented Scope 4", 4881, OWN)
          .having("_vxi-11._tcp", "Invented Scope 4", 111, OWN)
          .having("_lxi._tcp", "Invented Scope 4", 80, OWN)
          .start();
      List<Announcement> heard = listen();
      assertEquals(
          List.of(
              "TCPIP0::127.0.0.1::5555::SOCKET",
              "TCPIP0::127.0.0.1::hislip0,4881::INSTR",
              "TCPIP0::127.0.0.1::inst0::INSTR",
              "none"),
          heard.stream()
              .map(one -> one.resource().map(ResourceName::toString).orElse("none"))
              .toList());
      assertEquals("Invented Scope 4 (a.b)", heard.get(0).name());
      assertEquals(new Told("", "S4", "", ""), heard.get(0).told());
    }
  }

  @Test
  void whatLiesOrOverflowsIsCutOrLeftOut() throws IOException {
    String[] huge = new String[20];
    java.util.Arrays.fill(huge, "x=" + "y".repeat(250));
    huge[0] = "Manufacturer=" + "M".repeat(200);
    huge[1] = "Model=\u001b[2Jevil\r\nmodel";
    byte[] broken = new byte[60];
    broken[2] = (byte) 0x84;
    broken[7] = 20;
    broken[12] = (byte) 0xC0;
    broken[13] = 12;
    try (MulticastAnnouncer neighbour = new MulticastAnnouncer(OWN)) {
      neighbour
          .babbling(broken)
          .having("_scpi-raw._tcp", "Huge", 5555, OWN, huge)
          .having("_scpi-raw._tcp", "Elsewhere", 5556, InetAddress.getByName("198.51.100.7"))
          .having("_scpi-raw._tcp", "No port", 0, OWN)
          .start();
      List<Announcement> heard = listen();
      assertEquals(List.of("Huge"), heard.stream().map(Announcement::name).toList());
      assertEquals(64, heard.get(0).told().manufacturer().length());
      assertEquals("[2Jevil model", heard.get(0).told().model());
    }
  }

  @Test
  void anAnnouncementThatComesTwiceIsOne() throws IOException {
    try (MulticastAnnouncer neighbour = new MulticastAnnouncer(OWN);
        MulticastAnnouncer echo = new MulticastAnnouncer(OWN)) {
      neighbour.having("_scpi-raw._tcp", "Twice", 5555, OWN).start();
      echo.having("_scpi-raw._tcp", "Twice", 5555, OWN).start();
      assertEquals(1, listen().size());
    }
  }

  @Test
  void aStopEndsTheListening() {
    StopRequest stop = new StopRequest();
    stop.request();
    assertThrows(
        StoppedException.class,
        () -> Announcements.listen(List.of(OWN), Duration.ofHours(1), Clock.system(), stop));
  }

  @Test
  void withNoNetworkThatTakesMulticastASentenceSaysSo() {
    LinkException refused =
        assertThrows(
            LinkException.class,
            () -> Announcements.listen(List.of(), TIME, Clock.system(), new StopRequest()));
    assertTrue(String.valueOf(refused.getMessage()).startsWith("no announcement can be heard"));
  }

  @Test
  void aSubnetEndsWhereItsPrefixEnds() throws IOException {
    Subnet subnet = new Subnet(InetAddress.getByName("192.0.2.10"), 26);
    assertTrue(subnet.contains(InetAddress.getByName("192.0.2.63")));
    assertFalse(subnet.contains(InetAddress.getByName("192.0.2.64")));
    assertEquals(
        InetAddress.getByName("169.254.7.8"),
        subnet.nearest(InetAddress.getByName("203.0.113.1"), InetAddress.getByName("169.254.7.8")));
  }

  private static List<Announcement> listen() {
    return Announcements.listen(List.of(OWN), TIME, Clock.system(), new StopRequest());
  }
}

package mainsgap.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javax.jmdns.JmDNS;
import javax.jmdns.ServiceEvent;
import javax.jmdns.ServiceInfo;
import javax.jmdns.ServiceListener;
import mainsgap.link.Announcement.Service;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens on the network for instruments that announce themselves: multicast DNS (RFC 6762) and
 * DNS-SD (RFC 6763). One question for each service goes to the multicast address; nothing goes to
 * an instrument.
 */
public final class Announcements {
  private static final Logger LOG = LoggerFactory.getLogger(Announcements.class);

  /** A network with more is no bench. */
  private static final int MOST = 512;

  private static final String DOMAIN = ".local.";

  /** By service, name and place: the text record may come after the rest. */
  private final Map<List<Object>, Announcement> heard = new ConcurrentHashMap<>();

  private final List<JmDNS> ears = new ArrayList<>();

  private Announcements() {}

  /**
   * Listens for {@code time} on every network of this computer, its own loopback among them.
   *
   * @return each announcement once, the raw sockets first
   * @throws LinkException where no network can be listened on
   * @throws mainsgap.waiting.StoppedException as soon as {@code stop} is requested
   */
  public static List<Announcement> listen(Duration time, Clock clock, StopRequest stop) {
    return listen(ownAddresses(), time, clock, stop);
  }

  static List<Announcement> listen(
      List<InetAddress> own, Duration time, Clock clock, StopRequest stop) {
    Announcements announcements = new Announcements();
    try {
      own.forEach(announcements::listenOn);
      if (announcements.ears.isEmpty()) {
        throw new LinkException(
            "no announcement can be heard: none of the networks of this computer takes multicast"
                + " (UDP port 5353); check the connection and the firewall, or name the instrument");
      }
      clock.pause(time, stop);
      return announcements.sorted();
    } finally {
      announcements.close();
    }
  }

  /** One instance for each address: one that listens everywhere mixes up the networks. */
  private void listenOn(InetAddress own) {
    try {
      // with a name of its own no reverse look-up of the address is made, which may take long
      JmDNS ear = JmDNS.create(own, "mainsgap-" + ears.size());
      ears.add(ear);
      Subnet subnet = Subnet.of(own);
      for (Service service : Service.values()) {
        ear.addServiceListener(service.type() + DOMAIN, new Listener(ear, service, subnet));
      }
    } catch (IOException e) {
      LOG.info("announcements cannot be heard on {}: {}", own, e.getMessage());
    }
  }

  private List<Announcement> sorted() {
    return heard.values().stream()
        .sorted(
            Comparator.comparing(Announcement::service)
                .thenComparing(Announcement::name)
                .thenComparing(Announcement::host)
                .thenComparing(Announcement::port))
        .toList();
  }

  /** Closing an instance takes seconds in which it only says good-bye: nobody waits for that. */
  private void close() {
    for (JmDNS ear : ears) {
      Thread thread = new Thread(() -> close(ear), "mdns-good-bye");
      thread.setDaemon(true);
      thread.start();
    }
  }

  private static void close(JmDNS ear) {
    try {
      ear.close();
    } catch (IOException | RuntimeException e) {
      LOG.debug("an ear for announcements did not close well", e);
    }
  }

  private static List<InetAddress> ownAddresses() {
    try {
      List<InetAddress> own = new ArrayList<>();
      for (NetworkInterface board : NetworkInterface.networkInterfaces().toList()) {
        if (board.isUp() && (board.supportsMulticast() || board.isLoopback())) {
          board.inetAddresses().filter(Announcements::isWorthListening).forEach(own::add);
        }
      }
      return own;
    } catch (SocketException e) {
      throw new LinkException(
          "the networks of this computer cannot be listed: " + e.getMessage(), e);
    }
  }

  /** IPv4, and the one IPv6 address of each board by which neighbours speak to each other. */
  private static boolean isWorthListening(InetAddress address) {
    return address.getAddress().length == 4 || address.isLinkLocalAddress();
  }

  /** Called on threads of the library. */
  private final class Listener implements ServiceListener {
    private final JmDNS ear;
    private final Service service;
    private final Subnet subnet;

    Listener(JmDNS ear, Service service, Subnet subnet) {
      this.ear = ear;
      this.service = service;
      this.subnet = subnet;
    }

    @Override
    public void serviceAdded(ServiceEvent event) {
      ear.requestServiceInfo(event.getType(), event.getName(), false, 1);
    }

    @Override
    public void serviceRemoved(ServiceEvent event) {
      LOG.debug("{} says good-bye", event.getName());
    }

    @Override
    public void serviceResolved(ServiceEvent event) {
      try {
        keep(event.getInfo());
      } catch (RuntimeException e) {
        LOG.info("an announcement makes no sense: {}", e.toString());
      }
    }

    private void keep(ServiceInfo info) {
      InetAddress host = subnet.nearest(info.getInetAddresses());
      if (host == null) {
        LOG.info("{} announces itself at no address of this network", info.getName());
        return;
      }
      if (info.getPort() < 1 || info.getPort() > 65_535 || heard.size() >= MOST) {
        return;
      }
      Announcement now =
          new Announcement(
              service,
              AnnouncedText.plain(info.getName()),
              host.getHostAddress(),
              info.getPort(),
              AnnouncedText.told(info::getPropertyString));
      heard.merge(
          List.of(service, now.name(), now.host(), now.port()),
          now,
          (before, later) -> later.told().isEmpty() ? before : later);
    }
  }
}

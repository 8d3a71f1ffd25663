package mainsgap.bench;

import mainsgap.bench.FoundInstrument.Source;
import mainsgap.link.Announcement;
import mainsgap.link.Announcement.Told;
import mainsgap.link.ResourceName;
import org.jspecify.annotations.Nullable;

/**
 * One way to an instrument, as one source knows it.
 *
 * @param resource null where an instrument only says that it is there
 * @param host the network address; empty where it is none
 */
record Offer(@Nullable ResourceName resource, Source source, String name, String host, Told told) {
  static final Told NOTHING = new Told("", "", "", "");

  static Offer of(Announcement announcement) {
    return new Offer(
        announcement.resource().orElse(null),
        Source.ANNOUNCED,
        announcement.name(),
        announcement.host(),
        announcement.told());
  }

  static Offer ofBroadcast(ResourceName.Vxi11 resource) {
    return new Offer(resource, Source.BROADCAST, resource.host(), resource.host(), NOTHING);
  }

  static Offer ofPort(ResourceName resource, Source source, String name) {
    return new Offer(resource, source, name, "", NOTHING);
  }

  /** The raw socket first: every instrument that has one serves it in full (common practice). */
  int rank() {
    if (resource instanceof ResourceName.TcpSocket) {
      return 0;
    }
    return resource instanceof ResourceName.Hislip ? 1 : 2;
  }
}

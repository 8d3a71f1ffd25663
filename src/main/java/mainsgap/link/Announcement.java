package mainsgap.link;

import java.util.Optional;

/**
 * What somebody on the network announced (DNS-SD, RFC 6763): that a service is at a host. It is a
 * claim; nothing was asked.
 *
 * @param service which service
 * @param name the instance's name, for people
 * @param host the address, as text
 * @param port the service's port
 * @param told what the announcement says of the instrument
 */
public record Announcement(Service service, String name, String host, int port, Told told) {
  private static final String DEVICE = "inst0";
  private static final String HISLIP_DEVICE = "hislip0";
  private static final int PORTMAPPER_PORT = 111;

  /** The services by which instruments are found. */
  public enum Service {
    /** SCPI over a raw socket. */
    SCPI_RAW("_scpi-raw._tcp"),
    /** HiSLIP. */
    HISLIP("_hislip._tcp"),
    /** VXI-11. */
    VXI_11("_vxi-11._tcp"),
    /** An instrument with a network face; how it is spoken to, the others say. */
    LXI("_lxi._tcp");

    private final String type;

    Service(String type) {
      this.type = type;
    }

    /** The service type of RFC 6763 clause 7. */
    public String type() {
      return type;
    }
  }

  /**
   * What an announcement says of an instrument; each is empty where it does not say.
   *
   * @param manufacturer its maker
   * @param model the model
   * @param serial the serial number
   * @param firmware the version of its program
   */
  public record Told(String manufacturer, String model, String serial, String firmware) {
    /** Whether it says nothing. */
    public boolean isEmpty() {
      return (manufacturer + model + serial + firmware).isEmpty();
    }

    /** Whether it names one specimen. */
    public boolean isSpecimen() {
      return !model.isEmpty() && !serial.isEmpty();
    }
  }

  /** The link that it offers; empty where it names none. */
  public Optional<ResourceName> resource() {
    return switch (service) {
      case SCPI_RAW -> Optional.of(new ResourceName.TcpSocket(0, host, port));
      case HISLIP -> Optional.of(new ResourceName.Hislip(0, host, HISLIP_DEVICE, port));
      case VXI_11 ->
          Optional.of(
              new ResourceName.Vxi11(
                  0,
                  host,
                  DEVICE,
                  port == PORTMAPPER_PORT ? ResourceName.Vxi11.ASK_PORTMAPPER : port));
      case LXI -> Optional.empty();
    };
  }
}

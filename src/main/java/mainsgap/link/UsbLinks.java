package mainsgap.link;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import mainsgap.waiting.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Opens USB instruments by the way that the operating system has for them. */
final class UsbLinks {
  /** What to do where USB does not serve. */
  static final String INSTEAD =
      "; or use the instrument's network link, such as TCPIP::host::"
          + ResourceName.SCPI_RAW_PORT
          + "::SOCKET";

  private static final Logger LOG = LoggerFactory.getLogger(UsbLinks.class);

  private UsbLinks() {}

  static Link open(ResourceName.Usb resource) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    UsbtmcDevice device = system.startsWith("linux") ? byKernel(resource) : byLibusb(resource);
    return new UsbtmcLink(resource, device, Clock.system());
  }

  private static UsbtmcDevice byKernel(ResourceName.Usb resource) {
    UsbInstruments.Present found = choose(resource, UsbInstruments.present());
    return KernelUsbtmc.open(kernel(resource), found.node(), resource);
  }

  private static UsbtmcDevice byLibusb(ResourceName.Usb resource) {
    try {
      LibusbPipes pipes = new LibusbBus(LibusbBus.load(), resource).open();
      return new BulkUsbtmc(pipes, UsbtmcLink.BUFFER_BYTES, Clock.system());
    } catch (LinkageError e) {
      LOG.debug("libusb can't be loaded", e);
      throw new LinkException(
          resource
              + ": on this system USB instruments are reached through libusb 1.0, which is not"
              + " installed"
              + INSTEAD,
          e);
    }
  }

  /**
   * The one that is meant. The board of the name does not count: it numbers computers' sockets,
   * which no system numbers alike.
   *
   * @throws LinkException naming those that are there
   */
  static UsbInstruments.Present choose(
      ResourceName.Usb wanted, List<UsbInstruments.Present> present) {
    return present.stream()
        .filter(found -> isMeant(wanted, found.resource()))
        .findFirst()
        .orElseThrow(
            () ->
                new LinkException(
                    wanted
                        + " is not plugged in, or the kernel's usbtmc driver is not loaded (modprobe"
                        + " usbtmc); USB instruments present: "
                        + (present.isEmpty()
                            ? "none"
                            : present.stream()
                                .map(found -> found.resource().toString())
                                .collect(Collectors.joining(", ")))));
  }

  private static boolean isMeant(ResourceName.Usb wanted, ResourceName.Usb found) {
    return wanted.vendor() == found.vendor()
        && wanted.product() == found.product()
        && wanted.serial().equals(found.serial())
        && wanted.interfaceNumber() == found.interfaceNumber();
  }

  private static UsbtmcKernel kernel(ResourceName.Usb resource) {
    try {
      return LinuxUsbtmc.load();
    } catch (LinkageError e) {
      throw new LinkException(
          resource
              + ": the system's own calls can't be reached from Java ("
              + e.getMessage()
              + "); let programs be loaded from the home folder's cache, or use the instrument's"
              + " network link",
          e);
    }
  }
}

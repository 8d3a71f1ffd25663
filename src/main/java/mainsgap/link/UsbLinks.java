package mainsgap.link;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import mainsgap.waiting.Clock;

/** Opens USB instruments by the way that the operating system has for them. */
final class UsbLinks {
  private UsbLinks() {}

  static Link open(ResourceName.Usb resource) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (!system.startsWith("linux")) {
      throw new LinkException(
          resource
              + ": USB instruments are not served on this system; use the instrument's network link,"
              + " TCPIP::host::"
              + ResourceName.SCPI_RAW_PORT
              + "::SOCKET");
    }
    UsbInstruments.Present found = choose(resource, UsbInstruments.present());
    UsbtmcDevice device = KernelUsbtmc.open(kernel(resource), found.node(), resource);
    return new UsbtmcLink(resource, device, Clock.system());
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

package mainsgap.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The USBTMC instruments that Linux knows, from the files in which it describes its devices. */
public final class UsbInstruments {
  /** Stands for the serial number of an instrument that has none. */
  static final String NO_SERIAL = "0";

  private static final Path SYSTEM = Path.of("/sys/class/usbmisc");
  private static final Pattern NODE = Pattern.compile("usbtmc(\\d{1,5})");
  private static final Logger LOG = LoggerFactory.getLogger(UsbInstruments.class);

  private UsbInstruments() {}

  /**
   * An instrument that is plugged in.
   *
   * @param resource its name; a serial number of 0 where it has none
   * @param node where the kernel offers it, such as /dev/usbtmc0
   * @param description maker and product in the words of the instrument, or empty
   */
  public record Present(ResourceName.Usb resource, Path node, String description) {}

  /** Those that are there now; none on a system other than Linux. Nothing is sent to them. */
  public static List<Present> present() {
    return present(SYSTEM);
  }

  /** The same from a folder that is built like {@code /sys/class/usbmisc}. */
  static List<Present> present(Path folder) {
    List<Present> found = new ArrayList<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder, "usbtmc*")) {
      for (Path entry : entries) {
        describe(entry).ifPresent(found::add);
      }
    } catch (NoSuchFileException | NotDirectoryException e) {
      LOG.debug("no {}: no USBTMC driver has been at work", folder);
    } catch (IOException e) {
      throw new LinkException("USB instruments can't be listed from " + folder + ": " + e, e);
    }
    found.sort(Comparator.comparingInt(one -> numberOf(one.node().getFileName().toString())));
    return found;
  }

  /**
   * The node is a link to the USB interface, whose folder lies in that of the device. It may be
   * unplugged while it is being read.
   */
  private static Optional<Present> describe(Path entry) {
    String name = entry.getFileName().toString();
    if (numberOf(name) < 0) {
      return Optional.empty();
    }
    try {
      Path usbInterface = entry.resolve("device").toRealPath();
      Path device = usbInterface.resolve("..").toRealPath();
      String serial = text(device.resolve("serial"));
      ResourceName.Usb resource =
          new ResourceName.Usb(
              0,
              hex(device.resolve("idVendor")),
              hex(device.resolve("idProduct")),
              serial.isEmpty() ? NO_SERIAL : serial,
              hex(usbInterface.resolve("bInterfaceNumber")));
      String description =
          (text(device.resolve("manufacturer")) + " " + text(device.resolve("product"))).strip();
      return Optional.of(new Present(resource, Path.of("/dev", name), description));
    } catch (IOException | NumberFormatException e) {
      LOG.debug("{} does not describe an instrument", entry, e);
      return Optional.empty();
    }
  }

  private static int numberOf(String node) {
    Matcher matcher = NODE.matcher(node);
    return matcher.matches() ? Integer.parseInt(matcher.group(1)) : -1;
  }

  private static int hex(Path file) throws IOException {
    return Integer.parseInt(Files.readString(file, StandardCharsets.US_ASCII).strip(), 16);
  }

  private static String text(Path file) throws IOException {
    return Files.exists(file)
        ? new String(Files.readAllBytes(file), StandardCharsets.UTF_8).strip()
        : "";
  }
}

package mainsgap.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The serial ports of this machine. */
public final class SerialPorts {
  private static final Logger LOG = LoggerFactory.getLogger(SerialPorts.class);

  private SerialPorts() {}

  /**
   * A port that the operating system knows; whether something is connected to it, it does not.
   *
   * @param resource with the standard settings
   * @param description in the words of the driver
   */
  public record Present(ResourceName.Serial resource, String description) {}

  /**
   * The ports that are there now, by name. None is opened.
   *
   * @throws LinkException where the serial library can't be loaded
   */
  public static List<Present> present() {
    return loaded(
        () ->
            Stream.of(SerialPort.getCommPorts())
                .map(
                    port ->
                        new Present(
                            new ResourceName.Serial(nameOf(port)), port.getDescriptivePortName()))
                .sorted(Comparator.comparing(found -> found.resource().port()))
                .toList());
  }

  /** Opens a port. */
  static SerialLine open(ResourceName.Serial resource) {
    String path = path(resource, System.getProperty("os.name", ""));
    boolean isFile = path.startsWith("/");
    if (isFile && !exists(path)) {
      throw new LinkException(
          resource + ": there is no serial port " + path + "; present: " + presentForSentence());
    }
    if (isFile && !(Files.isReadable(Path.of(path)) && Files.isWritable(Path.of(path)))) {
      throw new LinkException(
          resource
              + ": you may not read and write "
              + path
              + "; join the group that owns it (often dialout) and log in again");
    }
    SerialLine line = loaded(() -> openOrNull(path, resource.settings()));
    if (line == null) {
      throw new LinkException(
          resource
              + " does not open: is it a serial port, does no other program hold it, and does it know"
              + " these settings? Present: "
              + presentForSentence());
    }
    return line;
  }

  private static @Nullable SerialLine openOrNull(String path, SerialSettings settings) {
    try {
      return SerialLine.open(path, settings);
    } catch (SerialPortInvalidPortException e) {
      LOG.debug("{} is no port", path, e);
      return null;
    }
  }

  /** Where the operating system keeps the port; a bare number counts from 1 (common practice). */
  static String path(ResourceName.Serial resource, String operatingSystem) {
    String port = resource.port();
    String system = operatingSystem.toLowerCase(Locale.ROOT);
    boolean number = port.matches("\\d{1,3}");
    if (system.startsWith("windows")) {
      return number ? "COM" + port : port;
    }
    if (number && system.startsWith("linux") && !port.equals("0")) {
      return "/dev/ttyS" + (Integer.parseInt(port) - 1);
    }
    if (number) {
      throw new LinkException(
          resource + ": this system does not number its ports; write the path, as in ASRL/dev/...");
    }
    return port.startsWith("/") ? port : "/dev/" + port;
  }

  private static String nameOf(SerialPort port) {
    String path = port.getSystemPortPath();
    return path.startsWith("/") ? path : port.getSystemPortName();
  }

  private static boolean exists(String path) {
    try {
      return Files.exists(Path.of(path));
    } catch (InvalidPathException e) {
      return false;
    }
  }

  private static String presentForSentence() {
    String names =
        present().stream()
            .map(found -> found.resource().toString())
            .collect(Collectors.joining(", "));
    return names.isEmpty() ? "none" : names;
  }

  /** The library unpacks a part of itself on first use. */
  private static <T extends @Nullable Object> T loaded(Supplier<T> use) {
    try {
      return use.get();
    } catch (LinkageError e) {
      throw new LinkException(
          "serial ports can't be used: the serial library found no folder from which it may load its"
              + " part for this system ("
              + firstLine(e)
              + "); let programs be loaded from "
              + System.getProperty("java.io.tmpdir")
              + ", or name another folder with MAINSGAP_JAVA_OPTIONS=-Djava.io.tmpdir=FOLDER",
          e);
    }
  }

  private static String firstLine(Throwable e) {
    return String.valueOf(e.getMessage()).lines().findFirst().orElse("no reason given");
  }
}

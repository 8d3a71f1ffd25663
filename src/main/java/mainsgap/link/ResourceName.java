package mainsgap.link;

import java.util.Locale;
import mainsgap.waiting.Deadline;

/**
 * Where an instrument is, in the grammar of VPP-4.3: such as {@code
 * TCPIP::192.0.2.10::5025::SOCKET}. {@code toString()} gives the name in full, defaults written
 * out.
 */
public sealed interface ResourceName {

  /** The port that IANA registered for SCPI over a raw socket (scpi-raw). */
  int SCPI_RAW_PORT = 5025;

  /**
   * Reads a resource name; case does not matter.
   *
   * @throws LinkException naming the part that is wrong and what is allowed there
   */
  static ResourceName parse(String name) {
    return ResourceNameParser.parse(name);
  }

  /**
   * Opens the link.
   *
   * @throws LinkException where the instrument can't be reached, or this kind of link isn't served
   */
  Link open(Deadline connectBy);

  /**
   * A raw TCP socket.
   *
   * @param board the computer's network board, 0 where none is named
   * @param host a name or an address, an IPv6 address without its brackets
   * @param port 1 to 65535
   */
  record TcpSocket(int board, String host, int port) implements ResourceName {
    @Override
    public Link open(Deadline connectBy) {
      return TcpLink.open(this, connectBy);
    }

    @Override
    public String toString() {
      return "TCPIP" + board + "::" + inBrackets(host) + "::" + port + "::SOCKET";
    }
  }

  /**
   * An instrument by VXI-11. VPP-4.3 always asks the instrument's portmapper for the port; {@code
   * inst0,PORT} goes to a port straight away, where there is no portmapper. That form is an
   * extension of ours, after the one of HiSLIP, and only for names that begin with inst: a comma in
   * others, such as gpib0,9, is part of the name.
   *
   * @param board the computer's network board
   * @param host a name or an address
   * @param deviceName such as inst0
   * @param port of the core channel; {@link #ASK_PORTMAPPER} where none is named
   */
  record Vxi11(int board, String host, String deviceName, int port) implements ResourceName {
    /** The instrument's portmapper knows the port. */
    public static final int ASK_PORTMAPPER = 0;

    /** The instrument that the portmapper of a host leads to. */
    public Vxi11(int board, String host, String deviceName) {
      this(board, host, deviceName, ASK_PORTMAPPER);
    }

    @Override
    public Link open(Deadline connectBy) {
      return Vxi11Link.open(this, connectBy);
    }

    @Override
    public String toString() {
      String suffix = port == ASK_PORTMAPPER ? "" : "," + port;
      return "TCPIP" + board + "::" + inBrackets(host) + "::" + deviceName + suffix + "::INSTR";
    }
  }

  /**
   * An instrument by HiSLIP.
   *
   * @param board the computer's network board
   * @param host a name or an address
   * @param deviceName begins with hislip
   * @param port 4880 where none is named
   */
  record Hislip(int board, String host, String deviceName, int port) implements ResourceName {
    /** The port that IANA registered for HiSLIP. */
    public static final int DEFAULT_PORT = 4880;

    @Override
    public Link open(Deadline connectBy) {
      return HislipLink.open(this, connectBy);
    }

    @Override
    public String toString() {
      String suffix = port == DEFAULT_PORT ? "" : "," + port;
      return "TCPIP" + board + "::" + inBrackets(host) + "::" + deviceName + suffix + "::INSTR";
    }
  }

  /**
   * An instrument on USB (USBTMC).
   *
   * @param board the computer's USB board
   * @param vendor the vendor's number
   * @param product the product's number
   * @param serial the serial number, as the instrument spells it
   * @param interfaceNumber 0 where none is named
   */
  record Usb(int board, int vendor, int product, String serial, int interfaceNumber)
      implements ResourceName {
    @Override
    public Link open(Deadline connectBy) {
      return UsbLinks.open(this);
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "USB%d::0x%04X::0x%04X::%s::%d::INSTR",
          board,
          vendor,
          product,
          serial,
          interfaceNumber);
    }
  }

  /**
   * An instrument on a serial line.
   *
   * @param port a number, or a path or name of the operating system (a common extension)
   * @param settings how the bits go over the line; VPP-4.3 has no place for them, so that they
   *     follow the port behind commas (our own extension)
   */
  record Serial(String port, SerialSettings settings) implements ResourceName {
    /** A port with the standard settings. */
    public Serial(String port) {
      this(port, SerialSettings.standard());
    }

    @Override
    public Link open(Deadline connectBy) {
      return SerialLink.open(this);
    }

    @Override
    public String toString() {
      String words = settings.toString();
      return "ASRL" + port + (words.isEmpty() ? "" : "," + words) + "::INSTR";
    }
  }

  private static String inBrackets(String host) {
    return host.indexOf(':') >= 0 ? "[" + host + "]" : host;
  }
}

package mainsgap.link;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The grammar of VPP-4.3, as far as instruments use it:
 *
 * <pre>
 * TCPIP[board]::host::port::SOCKET
 * TCPIP[board]::host[::device name][::INSTR]
 * USB[board]::vendor::product::serial[::interface][::INSTR]
 * ASRLport[,settings][::INSTR]
 * </pre>
 *
 * <p>The device names {@code hislip0,port} and, an extension of ours, {@code inst0,port} name a
 * port of the instrument as well.
 */
final class ResourceNameParser {
  private static final String FORMS =
      "TCPIP::host::port::SOCKET, TCPIP::host::device::INSTR, USB::vendor::product::serial::INSTR"
          + " or ASRLport::INSTR";
  private static final Pattern SEPARATOR_OUTSIDE_BRACKETS = Pattern.compile("::(?![^\\[]*\\])");
  private static final Pattern INTERFACE =
      Pattern.compile("(TCPIP|USB)(\\d{0,5})|(ASRL)(.*)", Pattern.CASE_INSENSITIVE);
  private static final Pattern HOST = Pattern.compile("[A-Za-z0-9]([A-Za-z0-9_.-]*)");
  private static final Pattern IPV6 =
      Pattern.compile("\\[([0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*(%\\w+)?)\\]");
  private static final Pattern NUMBER = Pattern.compile("0[xX][0-9A-Fa-f]{1,6}|\\d{1,8}");
  private static final Pattern HISLIP =
      Pattern.compile("(hislip\\w*)(?:,(.*))?", Pattern.CASE_INSENSITIVE);
  private static final Pattern INST =
      Pattern.compile("(inst\\w*)(?:,(.*))?", Pattern.CASE_INSENSITIVE);

  private final String name;
  private final List<String> parts;

  private ResourceNameParser(String name) {
    this.name = name;
    this.parts = new ArrayList<>(List.of(SEPARATOR_OUTSIDE_BRACKETS.split(name, -1)));
  }

  static ResourceName parse(String name) {
    return new ResourceNameParser(name.strip()).parse();
  }

  private ResourceName parse() {
    if (name.chars().anyMatch(Character::isISOControl)) {
      throw new LinkException(
          "the resource name has a control character in it; allowed: printable characters, such as "
              + FORMS);
    }
    Matcher kind = INTERFACE.matcher(parts.get(0));
    if (!kind.matches()) {
      throw wrong("begins with '" + parts.get(0) + "'", FORMS);
    }
    if (kind.group(3) != null) {
      return serial(kind.group(4));
    }
    int board = kind.group(2).isEmpty() ? 0 : Integer.parseInt(kind.group(2));
    return kind.group(1).equalsIgnoreCase("USB") ? usb(board) : tcpip(board);
  }

  private ResourceName tcpip(int board) {
    if (last().equalsIgnoreCase("SOCKET")) {
      requireParts(4, 4, "TCPIP::host::port::SOCKET, such as TCPIP::192.0.2.10::5025::SOCKET");
      return new ResourceName.TcpSocket(board, host(parts.get(1)), port(parts.get(2)));
    }
    dropInstr();
    requireParts(2, 3, "TCPIP::host::port::SOCKET or TCPIP::host::device::INSTR");
    String host = host(parts.get(1));
    String device = parts.size() == 3 ? required(parts.get(2), "device name") : "inst0";
    Matcher hislip = HISLIP.matcher(device);
    if (hislip.matches()) {
      String port = hislip.group(2);
      int number = port == null ? ResourceName.Hislip.DEFAULT_PORT : port(port);
      return new ResourceName.Hislip(board, host, hislip.group(1), number);
    }
    Matcher inst = INST.matcher(device);
    if (inst.matches() && inst.group(2) != null) {
      return new ResourceName.Vxi11(board, host, inst.group(1), port(inst.group(2)));
    }
    return new ResourceName.Vxi11(board, host, device);
  }

  private ResourceName usb(int board) {
    dropInstr();
    requireParts(
        4, 5, "USB::vendor::product::serial::INSTR, such as USB::0x1234::0x0125::SN1::INSTR");
    int vendor = number(parts.get(1), "vendor", 0xFFFF);
    int product = number(parts.get(2), "product", 0xFFFF);
    String serial = required(parts.get(3), "serial number");
    int interfaceNumber = parts.size() == 5 ? number(parts.get(4), "interface", 255) : 0;
    return new ResourceName.Usb(board, vendor, product, serial, interfaceNumber);
  }

  private ResourceName serial(String port) {
    dropInstr();
    requireParts(1, 1, "ASRLport::INSTR, such as ASRL1::INSTR or ASRL/dev/ttyUSB0,115200::INSTR");
    String[] words = port.split(",", -1);
    SerialSettings settings = SerialSettings.standard();
    for (int i = 1; i < words.length; i++) {
      try {
        settings = SerialSettingsWords.with(settings, words[i]);
      } catch (IllegalArgumentException e) {
        throw wrong("has the serial setting '" + words[i] + "'", String.valueOf(e.getMessage()));
      }
    }
    return new ResourceName.Serial(required(words[0], "serial port after ASRL"), settings);
  }

  private String host(String text) {
    Matcher ipv6 = IPV6.matcher(text);
    if (ipv6.matches()) {
      return ipv6.group(1);
    }
    if (!HOST.matcher(text).matches()) {
      throw wrong(
          "has the host '" + text + "'", "a name, an IPv4 address, or an IPv6 address in brackets");
    }
    return text;
  }

  private int port(String text) {
    int port = number(text, "port", 65_535);
    if (port == 0) {
      throw wrong("has the port 0", "1 to 65535");
    }
    return port;
  }

  private int number(String text, String what, int largest) {
    String digits = NUMBER.matcher(text).matches() ? text : "";
    boolean hex = digits.regionMatches(true, 0, "0x", 0, 2);
    int value =
        digits.isEmpty() ? -1 : Integer.parseInt(hex ? digits.substring(2) : digits, hex ? 16 : 10);
    if (value < 0 || value > largest) {
      throw wrong("has the " + what + " '" + text + "'", "a number from 0 to " + largest);
    }
    return value;
  }

  private String required(String text, String what) {
    if (text.isBlank()) {
      throw wrong("has an empty " + what, FORMS);
    }
    return text;
  }

  private String last() {
    return parts.get(parts.size() - 1);
  }

  private void dropInstr() {
    if (parts.size() > 1 && last().equalsIgnoreCase("INSTR")) {
      parts.remove(parts.size() - 1);
    }
  }

  private void requireParts(int fewest, int most, String form) {
    if (parts.size() < fewest || parts.size() > most) {
      String hint = parts.size() > most ? " (an IPv6 address goes in brackets)" : "";
      throw wrong(
          "has " + (parts.size() < fewest ? "too few" : "too many") + " parts", form + hint);
    }
  }

  private LinkException wrong(String found, String allowed) {
    return new LinkException("the resource name '" + name + "' " + found + "; allowed: " + allowed);
  }
}

package mainsgap.link;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import mainsgap.link.SerialSettings.Flow;
import mainsgap.link.SerialSettings.Parity;
import mainsgap.link.SerialSettings.Terminator;

/** Reads the words behind the port of a serial resource name. */
final class SerialSettingsWords {
  /** What may stand there, for a complaint. */
  static final String ALLOWED =
      "a baud rate from "
          + SerialSettings.SLOWEST_BAUD
          + " to "
          + SerialSettings.FASTEST_BAUD
          + ", data bits with parity and stop bits such as 8N1 or 7E2, rts-cts or none, crlf or nl";

  private static final Pattern BAUD = Pattern.compile("\\d{2,8}");
  private static final Pattern FRAME = Pattern.compile("([5-8])([neo])([12])");

  private SerialSettingsWords() {}

  /**
   * Takes one word into account.
   *
   * @throws IllegalArgumentException saying what is allowed, where the word means nothing
   */
  static SerialSettings with(SerialSettings now, String word) {
    String plain = word.strip().toLowerCase(Locale.ROOT);
    Matcher frame = FRAME.matcher(plain);
    if (frame.matches()) {
      return new SerialSettings(
          now.baud(),
          Integer.parseInt(frame.group(1)),
          parity(frame.group(2)),
          Integer.parseInt(frame.group(3)),
          now.flow(),
          now.terminator());
    }
    if (BAUD.matcher(plain).matches()) {
      return withBaud(now, Integer.parseInt(plain));
    }
    return switch (plain) {
      case "none" -> withFlow(now, Flow.NONE);
      case "rts-cts" -> withFlow(now, Flow.RTS_CTS);
      case "nl" -> withTerminator(now, Terminator.NL);
      case "crlf" -> withTerminator(now, Terminator.CR_NL);
      case "xon-xoff" ->
          throw new IllegalArgumentException(
              "rts-cts or none, set alike on the instrument: XON/XOFF takes the bytes 11 and 13"
                  + " (hexadecimal) out of every waveform");
      default -> throw new IllegalArgumentException(ALLOWED);
    };
  }

  private static SerialSettings withBaud(SerialSettings now, int baud) {
    if (baud < SerialSettings.SLOWEST_BAUD || baud > SerialSettings.FASTEST_BAUD) {
      throw new IllegalArgumentException(ALLOWED);
    }
    return new SerialSettings(
        baud, now.dataBits(), now.parity(), now.stopBits(), now.flow(), now.terminator());
  }

  private static SerialSettings withFlow(SerialSettings now, Flow flow) {
    return new SerialSettings(
        now.baud(), now.dataBits(), now.parity(), now.stopBits(), flow, now.terminator());
  }

  private static SerialSettings withTerminator(SerialSettings now, Terminator terminator) {
    return new SerialSettings(
        now.baud(), now.dataBits(), now.parity(), now.stopBits(), now.flow(), terminator);
  }

  private static Parity parity(String letter) {
    return switch (letter) {
      case "e" -> Parity.EVEN;
      case "o" -> Parity.ODD;
      default -> Parity.NONE;
    };
  }
}

package mainsgap.link;

import java.util.Locale;
import java.util.StringJoiner;

/**
 * How the bits go over a serial line. Written behind the port of a resource name, in any order,
 * what is left out being standard: {@code 115200,8N1,rts-cts,crlf}.
 *
 * @param baud bits each second
 * @param dataBits 5 to 8
 * @param parity of each character
 * @param stopBits 1 or 2
 * @param flow what keeps one side from sending more than the other can take
 * @param terminator ends each message to the instrument
 */
public record SerialSettings(
    int baud, int dataBits, Parity parity, int stopBits, Flow flow, Terminator terminator) {
  /** The slowest rate that is accepted, in baud. */
  public static final int SLOWEST_BAUD = 50;

  /** The fastest rate that is accepted, in baud. */
  public static final int FASTEST_BAUD = 12_000_000;

  /** The bit that guards each character. */
  public enum Parity {
    /** None. */
    NONE('N'),
    /** Even. */
    EVEN('E'),
    /** Odd. */
    ODD('O');

    private final char letter;

    Parity(char letter) {
      this.letter = letter;
    }
  }

  /**
   * Flow control. There is no XON/XOFF: its two characters may not occur in the data, and a
   * waveform is made of any bytes.
   */
  public enum Flow {
    /** None. */
    NONE,
    /** By the wires RTS and CTS. */
    RTS_CTS
  }

  /** What ends a message to the instrument; replies may end with either. */
  public enum Terminator {
    /** NL, which IEEE 488.2 wants. */
    NL,
    /** CR NL. */
    CR_NL
  }

  /** Checks the values. */
  public SerialSettings {
    if (baud < SLOWEST_BAUD || baud > FASTEST_BAUD) {
      throw new IllegalArgumentException("no serial line has " + baud + " baud");
    }
    if (dataBits < 5 || dataBits > 8 || stopBits < 1 || stopBits > 2) {
      throw new IllegalArgumentException(
          "no serial line has " + dataBits + " data and " + stopBits + " stop bits");
    }
  }

  /** 9600 baud, 8N1, no flow control, NL: common practice, no standard says so. */
  public static SerialSettings standard() {
    return new SerialSettings(9600, 8, Parity.NONE, 1, Flow.NONE, Terminator.NL);
  }

  /** What the line carries at full speed, with the start bit of each character. */
  public int bytesPerSecond() {
    int bits = 1 + dataBits + (parity == Parity.NONE ? 0 : 1) + stopBits;
    return Math.max(1, baud / bits);
  }

  /** What differs from the standard, as it is written in a resource name; empty where nothing. */
  @Override
  public String toString() {
    SerialSettings standard = standard();
    StringJoiner words = new StringJoiner(",");
    if (baud != standard.baud) {
      words.add(Integer.toString(baud));
    }
    if (dataBits != 8 || parity != Parity.NONE || stopBits != 1) {
      words.add(String.format(Locale.ROOT, "%d%c%d", dataBits, parity.letter, stopBits));
    }
    if (flow == Flow.RTS_CTS) {
      words.add("rts-cts");
    }
    if (terminator == Terminator.CR_NL) {
      words.add("crlf");
    }
    return words.toString();
  }
}

package mainsgap.arming;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/** What is sent to a relay, and what it is to answer: nothing, where it answers nothing. */
final class RelayExchange {
  private final byte[] message;
  private final byte[] reply;

  RelayExchange(byte[] message, byte[] reply) {
    this.message = message.clone();
    this.reply = reply.clone();
  }

  byte[] message() {
    return message.clone();
  }

  byte[] reply() {
    return reply.clone();
  }

  /** The same with the angle in the message. */
  RelayExchange at(String angle) {
    String text = new String(message, StandardCharsets.ISO_8859_1);
    return new RelayExchange(
        text.replace(ScpiOutputCommands.ANGLE, angle).getBytes(StandardCharsets.ISO_8859_1), reply);
  }

  /** Bytes for people: as text where they are printable, else in hexadecimal. */
  static String words(byte[] bytes, int length) {
    boolean printable = length > 0;
    for (int i = 0; i < length; i++) {
      boolean lineEnd = bytes[i] == '\r' || bytes[i] == '\n';
      printable &= lineEnd || (bytes[i] >= ' ' && bytes[i] < 0x7F);
    }
    if (!printable) {
      return length == 0 ? "nothing" : HexFormat.ofDelimiter(" ").formatHex(bytes, 0, length);
    }
    return "'" + new String(bytes, 0, length, StandardCharsets.US_ASCII).strip() + "'";
  }
}

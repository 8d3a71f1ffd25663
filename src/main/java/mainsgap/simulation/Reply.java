package mainsgap.simulation;

import java.nio.charset.StandardCharsets;

/**
 * One answer of an instrument: text, or the bytes of a definite length block. The bytes are handed
 * over.
 *
 * @param bytes without the header of a block
 * @param isBlock whether they go out as a block
 * @param before a text that goes out before the header of a block
 */
@SuppressWarnings("ArrayRecordComponent") // carried from the command to the wire, never compared
record Reply(byte[] bytes, boolean isBlock, String before) {

  static Reply text(String text) {
    return new Reply(text.getBytes(StandardCharsets.US_ASCII), false, "");
  }

  static Reply number(long number) {
    return text(Long.toString(number));
  }

  static Reply block(byte[] bytes) {
    return new Reply(bytes, true, "");
  }

  /** The same behind a text. */
  Reply behind(String text) {
    return isBlock
        ? new Reply(bytes, true, text)
        : text(text + new String(bytes, StandardCharsets.US_ASCII));
  }
}

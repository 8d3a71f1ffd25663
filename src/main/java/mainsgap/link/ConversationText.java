package mainsgap.link;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Locale;

/** Bytes as a conversation file writes them. */
final class ConversationText {
  private static final int LINE = 76;

  /** Of so many bytes one may be unprintable in a text. */
  private static final int TEXT_PER_OTHER = 16;

  private ConversationText() {}

  /** Whether the bytes read better as text than in base64. */
  static boolean isText(byte[] bytes) {
    int others = 0;
    for (byte b : bytes) {
      if ((b < ' ' || b > '~') && b != '\n' && b != '\r' && b != '\t') {
        others++;
      }
    }
    return others * TEXT_PER_OTHER <= bytes.length;
  }

  /**
   * One line: printable ASCII as it is, {@code \n}, {@code \r}, {@code \t}, {@code \\}, {@code
   * \xHH}.
   */
  static String escaped(byte[] bytes) {
    StringBuilder text = new StringBuilder(bytes.length + 2);
    for (byte b : bytes) {
      switch (b) {
        case '\n' -> text.append("\\n");
        case '\r' -> text.append("\\r");
        case '\t' -> text.append("\\t");
        case '\\' -> text.append("\\\\");
        default -> text.append(plain(b & 0xFF));
      }
    }
    return text.toString();
  }

  static String escaped(String sentence) {
    return escaped(sentence.getBytes(StandardCharsets.UTF_8));
  }

  /** Lines of base64, each indented by two spaces and ended. */
  static String base64(byte[] bytes) {
    String text = Base64.getEncoder().encodeToString(bytes);
    StringBuilder lines = new StringBuilder();
    for (int from = 0; from < text.length(); from += LINE) {
      lines.append("  ").append(text, from, Math.min(text.length(), from + LINE)).append('\n');
    }
    return lines.toString();
  }

  private static String plain(int character) {
    return character >= ' ' && character <= '~'
        ? Character.toString(character)
        : String.format(Locale.ROOT, "\\x%02X", character);
  }
}

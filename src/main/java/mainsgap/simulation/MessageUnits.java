package mainsgap.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Takes a program message of IEEE 488.2 apart. Pure. */
final class MessageUnits {
  private MessageUnits() {}

  /**
   * One unit of a message.
   *
   * @param header from the root, with a leading colon, in upper case
   * @param parameters as they came, quotes included
   */
  record Unit(String header, List<String> parameters) {}

  /**
   * The units of a message, each header from the root: one that does not begin with a colon goes on
   * at the level of the one before; common commands leave that level alone.
   */
  static List<Unit> of(String message) {
    List<Unit> units = new ArrayList<>();
    String level = ":";
    for (String text : split(message, ';')) {
      String unit = text.strip();
      if (unit.isEmpty()) {
        continue;
      }
      int end = headerEnd(unit);
      String header = unit.substring(0, end).toUpperCase(Locale.ROOT);
      String rest = unit.substring(end).strip();
      if (header.startsWith("*")) {
        header = ":" + header;
      } else {
        header = header.startsWith(":") ? header : level + header;
        level = header.substring(0, header.lastIndexOf(':') + 1);
      }
      units.add(new Unit(header, rest.isEmpty() ? List.of() : trimmed(split(rest, ','))));
    }
    return units;
  }

  private static int headerEnd(String unit) {
    int at = 0;
    while (at < unit.length() && unit.charAt(at) > ' ') {
      at++;
    }
    return at;
  }

  private static List<String> trimmed(List<String> parts) {
    return parts.stream().map(String::strip).toList();
  }

  /** Splits at a separator that is not within quotes. */
  private static List<String> split(String text, char separator) {
    List<String> parts = new ArrayList<>();
    char quote = 0;
    int from = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quote != 0) {
        quote = c == quote ? 0 : quote;
      } else if (c == '"' || c == '\'') {
        quote = c;
      } else if (c == separator) {
        parts.add(text.substring(from, i));
        from = i + 1;
      }
    }
    if (quote != 0) {
      throw new ScpiFault(ScpiError.SYNTAX);
    }
    parts.add(text.substring(from));
    return parts;
  }
}

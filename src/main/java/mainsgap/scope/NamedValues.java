package mainsgap.scope;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import mainsgap.scpi.ScpiNumber;

/**
 * A preamble that names its values: {@code :WFMO:BYT_NR 2;NR_PT 1000;WFID "a; b";…}. Places differ
 * between generations of instruments, names don't, so nothing is taken by its place.
 */
final class NamedValues {
  static final NamedValues NONE = new NamedValues(Map.of());

  private static final Pattern UNIT = Pattern.compile("(?:\\S*:)?([A-Za-z_][\\w]*)\\s+(.+)");

  private final Map<String, String> values;

  private NamedValues(Map<String, String> values) {
    this.values = values;
  }

  /**
   * Takes a reply apart.
   *
   * @throws ScopeException if its values have no names
   */
  static NamedValues of(String reply) {
    Map<String, String> values = new HashMap<>();
    for (String unit : units(reply)) {
      Matcher matcher = UNIT.matcher(unit);
      if (!matcher.matches()) {
        throw new ScopeException(
            "the preamble has '"
                + unit
                + "', a value without a name: switch the instrument's headers on by"
                + " 'commands.connect' in its profile, or ask for each value by a query");
      }
      values.put(matcher.group(1).toUpperCase(Locale.ROOT), matcher.group(2).strip());
    }
    return new NamedValues(values);
  }

  String text(String name) {
    String value = values.get(name.toUpperCase(Locale.ROOT));
    if (value == null) {
      throw new ScopeException(
          "the preamble has no '"
              + name
              + "', it names "
              + String.join(", ", new TreeSet<>(values.keySet()))
              + ": check 'waveform.values' in the profile");
    }
    return Answers.bare(value);
  }

  double number(String name) {
    String text = text(name);
    try {
      return ScpiNumber.parse(text);
    } catch (NumberFormatException e) {
      throw new ScopeException(
          "the preamble has '" + text + "' for '" + name + "' where a number should be", e);
    }
  }

  /** The units between semicolons that are not within quotes. */
  private static List<String> units(String reply) {
    List<String> units = new ArrayList<>();
    char quote = 0;
    int from = 0;
    for (int i = 0; i <= reply.length(); i++) {
      char c = i == reply.length() ? ';' : reply.charAt(i);
      if (quote != 0 && i < reply.length()) {
        quote = c == quote ? 0 : quote;
      } else if (c == '"' || c == '\'') {
        quote = c;
      } else if (c == ';') {
        String unit = reply.substring(from, i).strip();
        if (!unit.isEmpty()) {
          units.add(unit);
        }
        from = i + 1;
      }
    }
    return units;
  }
}

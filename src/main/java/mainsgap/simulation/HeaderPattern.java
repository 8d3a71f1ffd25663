package mainsgap.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A command header in the notation of SCPI-1999, such as {@code SYSTem:ERRor[:NEXT]?}: upper case
 * is the short form, brackets are optional, {@code #} is a numeric suffix. Immutable.
 */
final class HeaderPattern {
  private static final Pattern NODE = Pattern.compile("(\\[)?:?([*A-Za-z_]+)(#)?\\]?");

  private final Pattern regex;

  private HeaderPattern(Pattern regex) {
    this.regex = regex;
  }

  static HeaderPattern of(String notation) {
    boolean query = notation.endsWith("?");
    Matcher nodes = NODE.matcher(query ? notation.substring(0, notation.length() - 1) : notation);
    List<String> parts = new ArrayList<>();
    while (nodes.find()) {
      String part = ":" + forms(nodes.group(2)) + (nodes.group(3) == null ? "" : "([0-9]{0,3})");
      parts.add(nodes.group(1) == null ? part : "(?:" + part + ")?");
    }
    return new HeaderPattern(Pattern.compile(String.join("", parts) + (query ? "\\?" : "")));
  }

  /**
   * The suffix of {@code header} where it is of this pattern, 1 where none was given.
   *
   * @param header from the root, with a leading colon, in upper case
   */
  OptionalInt suffixIn(String header) {
    Matcher matcher = regex.matcher(header);
    if (!matcher.matches()) {
      return OptionalInt.empty();
    }
    String suffix = matcher.groupCount() == 0 ? null : matcher.group(1);
    return OptionalInt.of(suffix == null || suffix.isEmpty() ? 1 : Integer.parseInt(suffix));
  }

  private static String forms(String mnemonic) {
    String longForm = mnemonic.toUpperCase(Locale.ROOT);
    String shortForm = mnemonic.replaceAll("[a-z]", "");
    String quoted = Pattern.quote(longForm);
    return shortForm.equals(longForm)
        ? quoted
        : "(?:" + quoted + "|" + Pattern.quote(shortForm) + ")";
  }
}

package mainsgap.scope;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One program message of a profile with its placeholders. Immutable. */
final class CommandTemplate {
  /** Small input buffers cut longer messages. */
  private static final int LONGEST = 200;

  private static final Pattern BRACES = Pattern.compile("\\{([^{}]*)\\}");
  private static final MathContext DIGITS = new MathContext(10);

  private final String text;
  private final List<Placeholder> placeholders;
  private final String key;

  private CommandTemplate(String text, List<Placeholder> placeholders, String key) {
    this.text = text;
    this.placeholders = placeholders;
    this.key = key;
  }

  /**
   * Checks {@code text} and makes a template of it.
   *
   * @throws IllegalArgumentException whose message goes on after the key, such as "has the
   *     placeholder ..."
   */
  static CommandTemplate of(String text, Collection<Placeholder> allowed) {
    if (!text.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      throw new IllegalArgumentException(
          "holds a character that no command has: write plain ASCII on one line");
    }
    if (text.length() > LONGEST || text.indexOf(';') >= 0) {
      throw new IllegalArgumentException(
          "is not one command of at most " + LONGEST + " characters: give each its own text");
    }
    List<Placeholder> found = new ArrayList<>();
    Matcher braces = BRACES.matcher(text);
    while (braces.find()) {
      found.add(placeholder(braces.group(1), allowed));
    }
    if (braces.replaceAll("").matches(".*[{}].*")) {
      throw new IllegalArgumentException("has a brace without its partner");
    }
    return new CommandTemplate(text, List.copyOf(found), "");
  }

  /** The same, from the profile's {@code key}, such as 'commands.arm'. */
  CommandTemplate from(String profileKey) {
    return new CommandTemplate(text, placeholders, profileKey);
  }

  /** Where the profile has it; empty where it came otherwise. */
  String key() {
    return key;
  }

  /** Whether the message asks for a reply. */
  boolean isQuery() {
    return text.indexOf('?') >= 0;
  }

  List<Placeholder> placeholders() {
    return placeholders;
  }

  /** The message with its numbers: base units, no exponent. */
  String filled(Map<Placeholder, Double> values) {
    StringBuilder message = new StringBuilder();
    Matcher braces = BRACES.matcher(text);
    for (Placeholder placeholder : placeholders) {
      Double value = values.get(placeholder);
      if (!braces.find() || value == null) {
        throw new IllegalArgumentException("no value for {" + placeholder.spelt() + "}: " + text);
      }
      braces.appendReplacement(message, number(value));
    }
    return braces.appendTail(message).toString();
  }

  @Override
  public String toString() {
    return text;
  }

  private static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static Placeholder placeholder(String name, Collection<Placeholder> allowed) {
    Optional<Placeholder> found =
        Stream.of(Placeholder.values()).filter(one -> one.spelt().equals(name)).findFirst();
    if (found.isEmpty() || !allowed.contains(found.get())) {
      throw new IllegalArgumentException(
          "has the placeholder {"
              + name
              + "}, which "
              + (found.isEmpty() ? "does not exist" : "has no value here")
              + "; allowed here: "
              + allowed.stream()
                  .map(one -> "{" + one.spelt() + "}")
                  .sorted()
                  .collect(Collectors.joining(", ")));
    }
    return found.get();
  }
}

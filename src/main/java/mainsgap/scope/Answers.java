package mainsgap.scope;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Answers without what some instruments put around them. */
final class Answers {
  /** A header such as {@code :TRIGGER:STATE}, left on, and the blank behind it. */
  private static final Pattern HEADER = Pattern.compile("[:*][\\w:*?]+\\s+(.+)");

  private static final Pattern QUOTED = Pattern.compile("\"(.*)\"|'(.*)'");

  private Answers() {}

  /** The answer without a header before it and quotes around it. */
  static String bare(String answer) {
    Matcher header = HEADER.matcher(answer.strip());
    String value = header.matches() ? header.group(1).strip() : answer.strip();
    Matcher quoted = QUOTED.matcher(value);
    if (!quoted.matches()) {
      return value;
    }
    return quoted.group(1) == null ? quoted.group(2) : quoted.group(1);
  }
}

package mainsgap.scpi;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One entry of the error queue (SCPI-1999 Vol. 2 chapter 21).
 *
 * @param number negative as the standard defines it, positive as the instrument does, 0 for none
 * @param text the instrument's own words, may be empty
 */
public record InstrumentError(int number, String text) {
  // a header (left on by some instruments), the number with or without its sign, quoted text
  private static final Pattern REPLY =
      Pattern.compile("(?:[:*A-Za-z?]+\\s+)?([+-]?\\d{1,6})\\s*(?:,\\s*(.*))?");

  static InstrumentError parse(String reply) {
    Matcher matcher = REPLY.matcher(reply);
    if (!matcher.matches()) {
      throw new ScpiException("it says '" + reply + "' where an error's number and text should be");
    }
    String text = matcher.group(2) == null ? "" : matcher.group(2);
    return new InstrumentError(Integer.parseInt(matcher.group(1)), unquoted(text));
  }

  /** Whether something went wrong: 0 is 'no error', -500 to -899 are mere events. */
  public boolean isFault() {
    return number != 0 && !(number <= -500 && number > -900);
  }

  @Override
  public String toString() {
    return text.isEmpty() ? Integer.toString(number) : number + " \"" + text + "\"";
  }

  private static String unquoted(String text) {
    boolean quoted =
        text.length() >= 2
            && (text.startsWith("\"") || text.startsWith("'"))
            && text.charAt(text.length() - 1) == text.charAt(0);
    return quoted ? text.substring(1, text.length() - 1) : text;
  }
}

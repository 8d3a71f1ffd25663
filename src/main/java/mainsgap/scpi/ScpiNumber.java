package mainsgap.scpi;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers as SCPI sends them: NR1, NR2, NR3, and the values that stand for none. */
public final class ScpiNumber {
  // SCPI-1999 Vol. 2 7.2.1.4 and 7.2.1.5: +-9.9E37 is infinity, 9.91E37 is not a number; 32-bit
  // floats round both
  private static final double LEAST_INFINITY = 9.8999E37;
  private static final double NOT_A_NUMBER = 9.91E37;
  private static final double NOT_A_NUMBER_TOLERANCE = 0.001E37;

  // some instruments leave a header before the number and its base unit behind it
  private static final Pattern FIELD =
      Pattern.compile(
          "(?:[:*A-Za-z][\\w:*?]*\\s+)?"
              + "(?:([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s?(?:V|S|HZ)?"
              + "|(NAN|[*]+|)|([+-]?)INF(?:INITY)?|(NINF))",
          Pattern.CASE_INSENSITIVE);

  private ScpiNumber() {}

  /** The value that {@code sent} stands for: itself, an infinity, or NaN. */
  public static double meaning(double sent) {
    if (Math.abs(sent) < LEAST_INFINITY || Double.isNaN(sent)) {
      return sent;
    }
    boolean none = Math.abs(Math.abs(sent) - NOT_A_NUMBER) < NOT_A_NUMBER_TOLERANCE;
    return none ? Double.NaN : Math.copySign(Double.POSITIVE_INFINITY, sent);
  }

  /**
   * Reads one field of a reply.
   *
   * @throws NumberFormatException where it is text
   */
  public static double parse(String field) {
    Matcher matcher = FIELD.matcher(field.strip());
    if (!matcher.matches()) {
      throw new NumberFormatException(field);
    }
    if (matcher.group(1) != null) {
      return meaning(Double.parseDouble(matcher.group(1)));
    }
    if (matcher.group(2) != null) {
      return Double.NaN;
    }
    boolean negative = matcher.group(4) != null || "-".equals(matcher.group(3));
    return negative ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
  }
}

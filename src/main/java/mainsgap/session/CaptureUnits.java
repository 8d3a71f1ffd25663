package mainsgap.session;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Units as the headers of capture files write them. */
final class CaptureUnits {
  /** What a column may hold. */
  enum Quantity {
    TIME,
    VOLTAGE,
    FREQUENCY,
    OTHER
  }

  /**
   * A unit.
   *
   * @param factor to seconds, volts or hertz
   */
  record Unit(Quantity quantity, double factor) {}

  private static final Map<String, Unit> UNITS =
      Map.ofEntries(
          Map.entry("s", new Unit(Quantity.TIME, 1)),
          Map.entry("sec", new Unit(Quantity.TIME, 1)),
          Map.entry("second", new Unit(Quantity.TIME, 1)),
          Map.entry("seconds", new Unit(Quantity.TIME, 1)),
          Map.entry("ms", new Unit(Quantity.TIME, 1e-3)),
          Map.entry("msec", new Unit(Quantity.TIME, 1e-3)),
          Map.entry("us", new Unit(Quantity.TIME, 1e-6)),
          Map.entry("usec", new Unit(Quantity.TIME, 1e-6)),
          Map.entry("ns", new Unit(Quantity.TIME, 1e-9)),
          Map.entry("v", new Unit(Quantity.VOLTAGE, 1)),
          Map.entry("volt", new Unit(Quantity.VOLTAGE, 1)),
          Map.entry("volts", new Unit(Quantity.VOLTAGE, 1)),
          Map.entry("mv", new Unit(Quantity.VOLTAGE, 1e-3)),
          Map.entry("uv", new Unit(Quantity.VOLTAGE, 1e-6)),
          Map.entry("kv", new Unit(Quantity.VOLTAGE, 1e3)),
          Map.entry("hz", new Unit(Quantity.FREQUENCY, 1)),
          Map.entry("khz", new Unit(Quantity.FREQUENCY, 1e3)),
          Map.entry("mhz", new Unit(Quantity.FREQUENCY, 1e6)),
          Map.entry("sa/s", new Unit(Quantity.FREQUENCY, 1)),
          Map.entry("s/s", new Unit(Quantity.FREQUENCY, 1)),
          Map.entry("a", new Unit(Quantity.OTHER, 1)),
          Map.entry("ma", new Unit(Quantity.OTHER, 1)),
          Map.entry("w", new Unit(Quantity.OTHER, 1)),
          Map.entry("db", new Unit(Quantity.OTHER, 1)));

  /** Name (unit), name [unit], name / unit, name in unit. */
  private static final Pattern NAME_AND_UNIT =
      Pattern.compile(
          "(.*?)(?:\\s*[(\\[]\\s*([^)\\]]+?)\\s*[)\\]]|\\s*/\\s*(\\S+)|\\s+in\\s+(\\S+))");

  private CaptureUnits() {}

  /** The unit that {@code word} is, bare or in parentheses or brackets; null where it is none. */
  static @Nullable Unit of(String word) {
    String bare = word.strip().replaceAll("^[(\\[](.*)[)\\]]$", "$1").strip();
    return UNITS.get(bare.replace('\u00b5', 'u').replace('\u03bc', 'u').toLowerCase(Locale.ROOT));
  }

  /** The unit at the end of a header; null where there is none that is known. */
  static @Nullable Unit inHeader(String header) {
    Matcher matcher = NAME_AND_UNIT.matcher(header.strip());
    return matcher.matches() ? of(unitText(matcher)) : null;
  }

  /** The header without its unit. */
  static String nameOf(String header) {
    Matcher matcher = NAME_AND_UNIT.matcher(header.strip());
    boolean hasUnit = matcher.matches() && of(unitText(matcher)) != null;
    return hasUnit ? matcher.group(1).strip() : header.strip();
  }

  private static String unitText(Matcher matcher) {
    for (int group = 2; group <= 4; group++) {
      String text = matcher.group(group);
      if (text != null) {
        return text;
      }
    }
    return "";
  }
}

package mainsgap.cli;

import java.time.Duration;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A duration from the command line, always with its unit.
 *
 * @param asTyped the words, for the record
 * @param millis the value in milliseconds, at least 0
 */
record Milliseconds(String asTyped, double millis) {
  private static final Pattern FORM =
      Pattern.compile("(\\d{1,9}(?:\\.\\d{0,9})?|\\.\\d{1,9})\\s*([a-zµμ]*)");

  /** Reads a duration such as "20ms", "0.02s" or "500us". */
  static Milliseconds parse(String words) {
    Matcher matcher = FORM.matcher(words.strip().toLowerCase(Locale.ROOT));
    if (!matcher.matches()) {
      throw new IllegalArgumentException(
          "'" + words + "' is not a duration: write a number with its unit, such as 20ms or 0.02s");
    }
    double number = Double.parseDouble(matcher.group(1));
    double millis =
        switch (matcher.group(2)) {
          case "s" -> number * 1e3;
          case "ms" -> number;
          case "us", "µs", "μs" -> number / 1e3;
          case "ns" -> number / 1e6;
          case "" ->
              throw new IllegalArgumentException(
                  "'" + words + "' has no unit: add ms, s or us, such as 20ms or 0.02s");
          default ->
              throw new IllegalArgumentException(
                  "'"
                      + words
                      + "' has an unknown unit: durations are in s, ms, us or ns, such as 20ms");
        };
    return new Milliseconds(words.strip(), millis);
  }

  /** The same, to the nanosecond. */
  Duration toDuration() {
    return Duration.ofNanos(Math.round(millis * 1e6));
  }

  /** Reads the value of an option. */
  static final class Converter implements ITypeConverter<Milliseconds> {
    @Override
    public Milliseconds convert(String words) {
      try {
        return parse(words);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(String.valueOf(e.getMessage()));
      }
    }
  }
}

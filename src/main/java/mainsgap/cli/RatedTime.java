package mainsgap.cli;

import mainsgap.transfer.claim.DeclaredClaim;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A declared transfer time from the command line, as it is printed: "20ms", "<= 20ms" or "<20ms".
 *
 * @param asTyped the words, for the record
 * @param strictlyBelow whether they say '<'
 */
record RatedTime(String asTyped, Milliseconds time, boolean strictlyBelow) {

  static RatedTime parse(String words) {
    String stripped = words.strip();
    boolean below = stripped.startsWith("<") && !stripped.startsWith("<=");
    String time = stripped.replaceFirst("^(<=|<|≤)", "");
    return new RatedTime(stripped, Milliseconds.parse(time), below);
  }

  DeclaredClaim claim(DeclaredClaim.Kind kind) {
    return new DeclaredClaim(
        asTyped, time.millis(), strictlyBelow, kind, "unknown", "unknown", "unknown");
  }

  /** Reads the value of an option. */
  static final class Converter implements ITypeConverter<RatedTime> {
    @Override
    public RatedTime convert(String words) {
      try {
        return parse(words);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(String.valueOf(e.getMessage()));
      }
    }
  }
}

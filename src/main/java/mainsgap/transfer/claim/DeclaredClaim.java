package mainsgap.transfer.claim;

import java.math.BigDecimal;

/**
 * A transfer time as its maker declares it, kept as it is printed.
 *
 * @param asPrinted the words of the claim, such as "< 20 ms"
 * @param millis the declared value in milliseconds, at least 0
 * @param strictlyBelow whether the print says '<' rather than '<=' or nothing
 * @param kind what the value is said to be
 * @param definition how the maker defines it, or "unknown"
 * @param source where it is printed, or "unknown"
 * @param date when it was read there (ISO 8601), or "unknown"
 */
public record DeclaredClaim(
    String asPrinted,
    double millis,
    boolean strictlyBelow,
    Kind kind,
    String definition,
    String source,
    String date) {

  /** What a declared value is said to be. */
  public enum Kind {
    /** No transfer takes longer. */
    MAXIMUM,
    /** The usual transfer: compared with the median, never judged as a maximum. */
    TYPICAL,
    /** Not said: judged as a maximum, and reported so. */
    UNSTATED
  }

  /** Checks that the value is a time. */
  public DeclaredClaim {
    if (!(millis >= 0) || Double.isInfinite(millis)) {
      throw new IllegalArgumentException(
          "a declared transfer time is a number of milliseconds from 0 up, found " + millis);
    }
  }

  /** A bare value of which nothing else is known. */
  public static DeclaredClaim ofMillis(double millis, String asPrinted) {
    return new DeclaredClaim(
        asPrinted, millis, false, Kind.UNSTATED, "unknown", "unknown", "unknown");
  }

  /** Whether a transfer can fail it; a typical value is only compared. */
  public boolean isLimit() {
    return kind != Kind.TYPICAL;
  }

  /** The value alone, such as "< 20 ms". */
  public String value() {
    String number = BigDecimal.valueOf(millis).stripTrailingZeros().toPlainString();
    return (strictlyBelow ? "< " : "") + number + " ms";
  }

  /** As it stands in a sentence, such as "the declared < 20 ms (taken as a maximum)". */
  String inSentence() {
    return switch (kind) {
      case MAXIMUM -> "the declared maximum of " + value();
      case TYPICAL -> "the declared typical " + value();
      case UNSTATED -> "the declared " + value() + " (taken as a maximum)";
    };
  }

  /**
   * Whether a transfer of so many milliseconds is within the claim: at most, or below where '<'.
   */
  boolean allows(double transferMillis) {
    return strictlyBelow ? transferMillis < millis : transferMillis <= millis;
  }
}

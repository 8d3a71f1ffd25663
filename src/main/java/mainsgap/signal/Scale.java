package mainsgap.signal;

/**
 * How codes become volts at the probe tip: {@code (code - referenceCode) * voltsPerCode +
 * originVolts}, the probe factor included.
 *
 * @param referenceCode the code that stands for {@code originVolts}
 * @param voltsPerCode the step of one code, in volts at the probe tip; not zero
 * @param originVolts in volts at the probe tip
 * @param lowestCode codes at or below it are clipped; negative infinity where no rail is known
 * @param highestCode codes at or above it are clipped; positive infinity where no rail is known
 */
public record Scale(
    double referenceCode,
    double voltsPerCode,
    double originVolts,
    double lowestCode,
    double highestCode) {

  /** Codes that are volts already, with no rail known. */
  public static final Scale VOLTS =
      new Scale(0, 1, 0, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Checks that the scale can turn codes into volts. */
  public Scale {
    if (!Double.isFinite(referenceCode)
        || !Double.isFinite(voltsPerCode)
        || !Double.isFinite(originVolts)
        || voltsPerCode == 0) {
      throw new IllegalArgumentException(
          "a scale needs finite numbers and a step that is not zero, found reference "
              + referenceCode
              + ", volts per code "
              + voltsPerCode
              + ", origin "
              + originVolts);
    }
    if (!(lowestCode < highestCode)) {
      throw new IllegalArgumentException(
          "the lowest code " + lowestCode + " is not below the highest code " + highestCode);
    }
  }

  /** The voltage at the probe tip that {@code code} stands for. */
  public double voltsOf(double code) {
    return (code - referenceCode) * voltsPerCode + originVolts;
  }

  /** Whether {@code code} lies on a rail of the converter. */
  public boolean isClipped(double code) {
    return code <= lowestCode || code >= highestCode;
  }
}

package mainsgap.report;

import org.jspecify.annotations.Nullable;

/** The figure of a return's cleanness that is held against its transfer time. */
public enum CleanMeasure {
  /** The residual disturbance over the first cycle after the return. */
  RESIDUAL(
      "residual disturbance",
      "% of nominal",
      "Residual disturbance: RMS of the voltage minus the settled supply over the first cycle after"
          + " the return.") {
    @Override
    @Nullable Double of(TrialPoint point) {
      return point.residualPercent();
    }
  },
  /** The distortion of the settled supply. */
  DISTORTION(
      "THD of the settled supply",
      "% of the fundamental",
      "THD: total harmonic distortion of the settled supply, orders 2 to 40 or as far as the sample"
          + " rate carries.") {
    @Override
    @Nullable Double of(TrialPoint point) {
      return point.distortionPercent();
    }
  },
  /** The peak overshoot. */
  OVERSHOOT(
      "overshoot",
      "% above nominal peak",
      "Overshoot: the highest voltage from the first return on, above nominal peak.") {
    @Override
    @Nullable Double of(TrialPoint point) {
      return point.overshootPercent();
    }
  };

  private final String words;
  private final String unit;
  private final String definition;

  CleanMeasure(String words, String unit, String definition) {
    this.words = words;
    this.unit = unit;
    this.definition = definition;
  }

  /** The measure for people. */
  public String words() {
    return words;
  }

  /** Its unit. */
  String unit() {
    return unit;
  }

  /** What it means, for the foot of a figure. */
  String definition() {
    return definition;
  }

  /** The figure of a trial; null where its capture cannot tell. */
  abstract @Nullable Double of(TrialPoint point);
}

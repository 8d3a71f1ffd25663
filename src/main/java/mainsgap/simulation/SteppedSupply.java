package mainsgap.simulation;

/**
 * A supply that switches between levels, symmetric about its peaks: quasi-square with one level,
 * stepped with more. Its edges are straight ramps, as an output filter leaves them. Immutable.
 */
final class SteppedSupply implements Supply {
  private static final double EDGE_SECONDS = 60e-6;

  private final Phase phase;
  private final double[] halfWidthsDegrees;
  private final double volts;
  private final double edgeDegrees;
  private final SoftStart start;

  /**
   * The rise of an inverter that starts.
   *
   * @param atSeconds when it starts
   * @param floor the fraction of the full amplitude that it starts with; 1 where it starts hard
   * @param timeConstantSeconds how fast it comes up
   */
  record SoftStart(double atSeconds, double floor, double timeConstantSeconds) {
    static SoftStart hard() {
      return new SoftStart(0, 1, 1);
    }

    double fractionAt(double seconds) {
      double since = Math.max(0, seconds - atSeconds);
      return 1 - (1 - floor) * Math.exp(-since / timeConstantSeconds);
    }
  }

  /**
   * A supply of equal steps.
   *
   * @param rmsVolts of the whole wave, once it has started
   * @param halfWidthsDegrees for each level, how far it reaches from the peak; falling
   */
  SteppedSupply(Phase phase, double rmsVolts, double[] halfWidthsDegrees, SoftStart start) {
    this.phase = phase;
    this.halfWidthsDegrees = halfWidthsDegrees.clone();
    this.volts = rmsVolts / rmsOfUnitSteps(halfWidthsDegrees);
    this.edgeDegrees = EDGE_SECONDS * 360 * phase.hertz();
    this.start = start;
  }

  /** The voltage of one step. */
  double stepVolts() {
    return volts;
  }

  @Override
  public double voltsAt(double seconds) {
    double degrees = phase.degreesAt(seconds);
    boolean positive = degrees < 180;
    double fromPeak = Math.abs(degrees - (positive ? 90 : 270));
    double steps = 0;
    for (double halfWidth : halfWidthsDegrees) {
      steps += Math.min(1, Math.max(0, (halfWidth - fromPeak) / edgeDegrees + 0.5));
    }
    return (positive ? steps : -steps) * volts * start.fractionAt(seconds);
  }

  @Override
  public double degreesAt(double seconds) {
    return phase.degreesAt(seconds);
  }

  @Override
  public double hertz() {
    return phase.hertz();
  }

  /** Level k (from 1) holds for twice (its half width - the next one's) in each 180 degrees. */
  private static double rmsOfUnitSteps(double[] halfWidthsDegrees) {
    double meanSquare = 0;
    for (int i = 0; i < halfWidthsDegrees.length; i++) {
      double next = i + 1 < halfWidthsDegrees.length ? halfWidthsDegrees[i + 1] : 0;
      double level = i + 1.0;
      meanSquare += level * level * (halfWidthsDegrees[i] - next) / 90;
    }
    return Math.sqrt(meanSquare);
  }
}

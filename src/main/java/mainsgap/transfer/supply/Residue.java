package mainsgap.transfer.supply;

/**
 * What is left on the load while nothing feeds it: a held level, also with hum, a level that
 * decays, or the decaying alternating voltage of a motor that runs on. {@code offset + e^(-t/decay)
 * (cosine cos(wt) + sine sin(wt))}, t from {@code referenceSeconds}.
 *
 * @param spreadVolts the standard deviation of samples about it
 * @param explainedTo one after the last sample that it explains
 */
public record Residue(
    double referenceSeconds,
    double offsetVolts,
    double decaySeconds,
    double frequencyHertz,
    double cosineVolts,
    double sineVolts,
    double spreadVolts,
    int explainedTo) {

  /** Followed backwards from its stretch a decay grows; beyond this it is held. */
  private static final double LONGEST_BACKWARDS_DECAYS = 1.5;

  /** Frequency, decay, cosine and sine. */
  private static final int MOTOR_UNKNOWNS = 4;

  private static final double VISIBLE_SHARE_OF_PEAK = 0.02;

  /** Slow probes round an edge by less. */
  private static final double SHORTEST_VISIBLE_DECAY_SECONDS = 0.2e-3;

  public static Residue level(double volts, double spreadVolts, int explainedTo) {
    return new Residue(0, volts, 1, 0, 0, 0, spreadVolts, explainedTo);
  }

  /** The numbers that were fitted for it. */
  public int unknowns() {
    if (isMotor()) {
      return MOTOR_UNKNOWNS;
    }
    return cosineVolts == 0 && sineVolts == 0 ? 1 : 3;
  }

  /** Whether it swings and runs down. */
  public boolean isMotor() {
    return frequencyHertz > 0 && Double.isFinite(decaySeconds);
  }

  /** Whether it is a level that decays over some time, or a motor. */
  public boolean isVisible(Recording recording) {
    boolean decays =
        frequencyHertz == 0
            && Math.abs(cosineVolts) > VISIBLE_SHARE_OF_PEAK * recording.peakVolts()
            && decaySeconds > SHORTEST_VISIBLE_DECAY_SECONDS;
    return decays || isMotor();
  }

  public double voltsAt(double seconds) {
    if (cosineVolts == 0 && sineVolts == 0) {
      return offsetVolts;
    }
    double t = Math.max(seconds - referenceSeconds, -LONGEST_BACKWARDS_DECAYS * decaySeconds);
    double angle = 2 * Math.PI * frequencyHertz * t;
    return offsetVolts
        + Math.exp(-t / decaySeconds)
            * (cosineVolts * Math.cos(angle) + sineVolts * Math.sin(angle));
  }
}

package mainsgap.transfer.supply;

/**
 * Tells what is the supply's own from what happens once: a notch that the load cuts into each
 * cycle, or a cycle that moves slowly away from its fit, is there a cycle later as well, and two
 * cycles later; a contact that bounces is not.
 */
public final class OwnShape {
  /** Alike means in the same direction, and by this share at least. */
  private static final double ALIKE_SHARE = 0.5;

  /** What fades is still there half a cycle later by this share at least. */
  private static final double MIRRORED_SHARE = 0.3;

  private static final int CYCLES = 2;

  private static final double LONGEST_CYCLES = 0.5;

  /** A cycle is no whole number of samples. */
  private static final int SLACK_SAMPLES = 1;

  private final Recording recording;
  private final Supply supply;
  private final double samplesPerCycle;

  public OwnShape(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
    this.samplesPerCycle = recording.time().sampleRateHertz() / supply.harmonics().frequencyHertz();
  }

  /**
   * Whether samples {@code from} (inclusive) to {@code to} (exclusive) deviate from the supply as
   * they do in the next cycles; never, where the record ends before these, or over so long that the
   * deviations of both half cycles cancel.
   */
  public boolean is(int from, int to) {
    if (to - from > LONGEST_CYCLES * samplesPerCycle) {
      return false;
    }
    double once = meanDeviation(from, to);
    for (int cycle = 1; cycle <= CYCLES; cycle++) {
      int later = (int) Math.round(cycle * samplesPerCycle);
      if (to + later + SLACK_SAMPLES > recording.length()
          || !isAlike(from + later, to + later, once)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Whether samples {@code from} (inclusive) to {@code to} (exclusive) deviate from the supply the
   * other way half a cycle later, if less: a supply that dwells at its crossings at first does so
   * at each, a contact bounces at one.
   */
  public boolean isMirrored(int from, int to) {
    int half = (int) Math.round(0.5 * samplesPerCycle);
    if (to + half > recording.length()) {
      return false;
    }
    double[] once = supply.deviationsIn(recording, from, to);
    double[] later = supply.deviationsIn(recording, from + half, to + half);
    double alike = 0;
    double squares = 0;
    for (int i = 0; i < once.length; i++) {
      alike -= once[i] * later[i];
      squares += once[i] * once[i];
    }
    return alike > MIRRORED_SHARE * squares;
  }

  private boolean isAlike(int from, int to, double once) {
    for (int slack = -SLACK_SAMPLES; slack <= SLACK_SAMPLES; slack++) {
      double later = meanDeviation(from + slack, to + slack) * Math.signum(once);
      if (later >= ALIKE_SHARE * Math.abs(once)) {
        return true;
      }
    }
    return false;
  }

  private double meanDeviation(int from, int to) {
    double sum = 0;
    for (double deviation : supply.deviationsIn(recording, from, to)) {
      sum += deviation;
    }
    return sum / (to - from);
  }
}

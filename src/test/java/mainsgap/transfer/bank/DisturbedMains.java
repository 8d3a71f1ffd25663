package mainsgap.transfer.bank;

/** What a disturbance, some time before the loss, makes of the supply before. */
final class DisturbedMains {
  /** High enough that a burst is over and over within a millisecond. */
  private static final double BURST_HERTZ = 7_300;

  private static final double RING_HERTZ = 620;

  private final Rig rig;

  DisturbedMains(Rig rig) {
    this.rig = rig;
  }

  /**
   * The voltage at a time.
   *
   * @param mainsVolts what it would be
   */
  double voltsAt(double seconds, double mainsVolts) {
    double since = seconds - (rig.lossSeconds() - rig.disturbedBeforeSeconds);
    boolean diesDown = rig.disturbed == Rig.Disturbed.RING || rig.disturbed == Rig.Disturbed.SURGE;
    boolean isOver = !diesDown && since >= rig.disturbedSeconds;
    if (since < 0 || isOver) {
      return mainsVolts;
    }
    double height = rig.peakVolts() * rig.disturbedShare;
    return switch (rig.disturbed) {
      case NOT -> mainsVolts;
      case PULSE -> mainsVolts + height;
      case NOTCH, SAG -> mainsVolts * rig.disturbedShare;
      case BURST -> mainsVolts + height * Math.sin(2 * Math.PI * BURST_HERTZ * since);
      case RING -> mainsVolts - height * ring(since);
      case SURGE -> mainsVolts + height * Math.exp(-since / rig.disturbedSeconds);
    };
  }

  private double ring(double since) {
    return Math.exp(-since / rig.disturbedSeconds) * Math.sin(2 * Math.PI * RING_HERTZ * since);
  }
}

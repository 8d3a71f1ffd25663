package mainsgap.transfer.supply;

/** Tells where a voltage lies at the residue: the load is dead there. */
public final class AtResidue {
  /** A run of which less than this share lies at the residue is a transient, no break. */
  private static final double DEAD_SHARE = 0.6;

  private static final double WITHIN_SHARE_OF_PEAK = 0.05;
  private static final double UP_TO_SECONDS = 0.1e-3;

  /** A dead load stays within so many spreads of its residue. */
  private static final double CROSSED_SPREADS = 2;

  private final Recording recording;
  private final Residue residue;

  public AtResidue(Recording recording, Residue residue) {
    this.recording = recording;
    this.residue = residue;
  }

  public boolean is(Segmentation.Run run) {
    return isIn(run.from(), run.to());
  }

  /** The last third of it: what comes before may still decay. */
  public boolean isAtEndOf(Segmentation.Run run) {
    return isIn(run.to() - (run.length() + 2) / 3, run.to());
  }

  /** Right up to its end: a make begins in a dead load, the swing of one does not. */
  public boolean isUpToEndOf(Segmentation.Run run) {
    int third = (run.length() + 2) / 3;
    return isIn(run.to() - Math.min(third, recording.samplesIn(UP_TO_SECONDS)), run.to());
  }

  /** Beyond doubt from one side of the residue to the other, as what only crosses it does. */
  public boolean isCrossedIn(Segmentation.Run run) {
    int half = run.length() / 2;
    double begins = meanFrom(run.from(), run.from() + half);
    double ends = meanFrom(run.to() - half, run.to());
    return begins * ends < 0 && Math.abs(ends - begins) > CROSSED_SPREADS * residue.spreadVolts();
  }

  /** The mean distance from the residue, of samples from {@code first} up to {@code end}. */
  private double meanFrom(int first, int end) {
    double sum = 0;
    for (int i = first; i < end; i++) {
      sum += recording.volts()[i] - residue.voltsAt(recording.time().secondsAt(i));
    }
    return sum / Math.max(1, end - first);
  }

  private boolean isIn(int first, int end) {
    double within = WITHIN_SHARE_OF_PEAK * recording.peakVolts();
    int dead = 0;
    for (int i = first; i < end; i++) {
      double residual = residue.voltsAt(recording.time().secondsAt(i));
      if (Math.abs(recording.volts()[i] - residual) < within) {
        dead++;
      }
    }
    return dead > DEAD_SHARE * (end - first);
  }
}

package mainsgap.transfer.gap;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.event.Sag;
import mainsgap.transfer.supply.FedAtOnce;
import mainsgap.transfer.supply.KeptVoltage;
import mainsgap.transfer.supply.LongestRun;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;

/** Whether what lies between a loss and a return is a gap, and no spike, notch, sag or step. */
final class GapProof {
  /** Shorter gaps are not told from notches. */
  private static final double SHORTEST_GAP_SECONDS = 0.4e-3;

  /** Where the low end of its interval lies above this, a gap is shown by its ends alone. */
  private static final double SHORTEST_PROVED_SECONDS = 0.1e-3;

  private static final double APART_SHARE_OF_PEAK = 0.08;

  /** Contacts bounce, supplies start softly: not all of a gap lies at the residue. */
  private static final double LEFT_SHARE = 0.3;

  /** Any voltage crosses the supply before now and then. */
  private static final double FOLLOWING_SHARE = 0.5;

  /** A gap is beyond doubt where so many standard uncertainties leave something of it. */
  private static final double BEYOND_DOUBT = 2;

  /** Ends that are known worse than this may be those of two supplies that go over. */
  private static final double VAGUE_SECONDS = 0.2e-3;

  private static final double FED_SHARE_OF_PEAK = 0.03;
  private static final double NEITHER_SHARE_OF_PEAK = 0.01;
  private static final double NEITHER_SHARE = 0.5;
  private static final double FAR_SHARE_OF_PEAK = 0.05;
  private static final double FAR_SECONDS = 49e-6;
  private static final double FED_NOISES = 4;

  /** A load that lies at its residue, away from what feeds it, for so long was let go. */
  private static final double AT_RESIDUE_SECONDS = 0.3e-3;

  private static final int FEWEST_AT_RESIDUE = 4;
  private static final double GOES_ON_SECONDS = 2e-3;
  private static final double AT_RESIDUE_SHARE_OF_PEAK = 0.02;

  private final Recording recording;
  private final Supply before;
  private final Supply after;
  private final Residue residue;

  /**
   * Between two supplies.
   *
   * @param residue what is left on the load in between
   */
  GapProof(Recording recording, Supply before, Supply after, Residue residue) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.residue = residue;
  }

  /**
   * Whether the load was left: for long enough, beyond the doubt of both ends or of where the load
   * lies in between, and either to a residue away from the supply before or to anything else but
   * that supply. A spike, a notch or a ring on a healthy supply follows it but for moments. An
   * output with steps of its own is another supply beyond doubt, wherever in its rest it came.
   */
  boolean isGap(Edge loss, Edge settled) {
    double seconds = settled.seconds() - loss.seconds();
    double doubt = BEYOND_DOUBT * Math.hypot(loss.standardSeconds(), settled.standardSeconds());
    boolean hasSteps = before.hasSteps() || after.hasSteps();
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(loss.seconds())));
    int to = (int) Math.ceil(recording.time().indexAt(settled.seconds()));
    int end = Math.min(to, recording.length());
    boolean isShown = seconds - doubt >= SHORTEST_PROVED_SECONDS || hasSteps;
    boolean isLeftBehind = isShown || (liesAtResidue(from, end) && !goesOn(end));
    if (seconds < SHORTEST_GAP_SECONDS || !isLeftBehind) {
      return false;
    }
    boolean isVague = doubt > BEYOND_DOUBT * VAGUE_SECONDS && !hasSteps;
    boolean isKept = new KeptVoltage(recording, before).isIn(from, end, after);
    if (isVague && !isKept && isFedThroughout(from, end)) {
      return false;
    }
    if (new Sag(recording, before).begins(from, end)
        || new FedAtOnce(recording, before).isFed(from, end)) {
      return false;
    }
    double[] suppliedBefore = before.voltsIn(recording.time(), from, end);
    double apart = APART_SHARE_OF_PEAK * recording.peakVolts();
    int left = 0;
    int followed = 0;
    double farthest = 0;
    for (int i = from; i < end; i++) {
      double at = recording.time().secondsAt(i);
      double residual = residue.voltsAt(at);
      double supplied = suppliedBefore[i - from];
      if (Math.abs(recording.volts()[i] - residual) < apart) {
        left++;
        farthest = Math.max(farthest, Math.abs(residual - supplied));
      }
      if (Math.abs(recording.volts()[i] - supplied) < apart) {
        followed++;
      }
    }
    boolean isLeft = left > LEFT_SHARE * (to - from) && farthest > apart;
    return isLeft
        || followed < FOLLOWING_SHARE * (to - from)
        || isFedByNeither(from, end)
        || isKept;
  }

  /** Whether neighbouring samples lie at the residue, away from both supplies, for long. */
  private boolean liesAtResidue(int from, int end) {
    double[] suppliedBefore = before.voltsIn(recording.time(), from, end);
    double[] suppliedAfter = after.voltsIn(recording.time(), from, end);
    double at = AT_RESIDUE_SHARE_OF_PEAK * recording.peakVolts();
    double apart = APART_SHARE_OF_PEAK * recording.peakVolts();
    int longest =
        LongestRun.of(
            from,
            end,
            i -> {
              double volts = recording.volts()[i];
              double residual = residue.voltsAt(recording.time().secondsAt(i));
              return Math.abs(volts - residual) < at
                  && Math.abs(volts - suppliedBefore[i - from]) > apart
                  && Math.abs(volts - suppliedAfter[i - from]) > apart;
            });
    return longest >= FEWEST_AT_RESIDUE
        && longest * recording.time().intervalSeconds() >= AT_RESIDUE_SECONDS;
  }

  /** Whether the supply before is followed again: a ring on it lies about zero for a moment too. */
  private boolean goesOn(int end) {
    int to = Math.min(recording.length(), end + recording.samplesIn(GOES_ON_SECONDS));
    double apart = APART_SHARE_OF_PEAK * recording.peakVolts();
    int followed = 0;
    for (double deviation : before.deviationsIn(recording, end, to)) {
      followed += Math.abs(deviation) < apart ? 1 : 0;
    }
    return followed > FOLLOWING_SHARE * (to - end);
  }

  /**
   * Whether most of the samples are those of neither supply, and some by far: two supplies that go
   * over into each other, or one that drifts, stay near the one or the other.
   */
  private boolean isFedByNeither(int from, int end) {
    int neither = fedByNeither(from, end, NEITHER_SHARE_OF_PEAK);
    double farSeconds =
        fedByNeither(from, end, FAR_SHARE_OF_PEAK) * recording.time().intervalSeconds();
    return neither > NEITHER_SHARE * (end - from) && farSeconds >= FAR_SECONDS;
  }

  /** Whether each sample is that of one of the two supplies, which go over into each other. */
  private boolean isFedThroughout(int from, int end) {
    int neither = fedByNeither(from, end, FED_SHARE_OF_PEAK);
    return neither * recording.time().intervalSeconds() < SHORTEST_PROVED_SECONDS;
  }

  /** How many samples are those of neither supply, within a share of peak and the noise. */
  private int fedByNeither(int from, int end, double shareOfPeak) {
    double[] suppliedBefore = before.voltsIn(recording.time(), from, end);
    double[] suppliedAfter = after.voltsIn(recording.time(), from, end);
    double apart =
        Math.max(shareOfPeak * recording.peakVolts(), FED_NOISES * before.usualSpreadVolts());
    int neither = 0;
    for (int i = from; i < end; i++) {
      double volts = recording.volts()[i];
      boolean isFed =
          Math.abs(volts - suppliedBefore[i - from]) < apart
              || Math.abs(volts - suppliedAfter[i - from]) < apart;
      neither += isFed ? 0 : 1;
    }
    return neither;
  }
}

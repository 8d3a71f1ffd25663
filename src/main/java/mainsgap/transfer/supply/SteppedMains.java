package mainsgap.transfer.supply;

import org.jspecify.annotations.Nullable;

/**
 * Mains whose voltage or angle steps, and that is lost too soon after that to settle: a supply of
 * its own, which feeds where a gap would be seen between the supplies about it.
 */
public final class SteppedMains {
  /** Behind its step it is whole so soon. */
  private static final double WHOLE_SECONDS = 0.5e-3;

  /** The fewest cycles that tell a frequency. */
  private static final double CYCLES = 1.6;

  /** A motor that runs on, or any other residue, decays by more within that time. */
  private static final double LEFT_SHARE_OF_PEAK = 0.01;

  private static final double LEFT_NOISES = 2;

  /** Lower mains would be a sag, or let equipment drop out by itself. */
  private static final double LEAST_SHARE = 0.7;

  /** No grid steps in its frequency; a residue slips. */
  private static final double SAME_FREQUENCY_SHARE = 0.03;

  private SteppedMains() {}

  /**
   * The supply that feeds from a departure on; null where none does.
   *
   * @param before what fed up to the departure
   */
  public static @Nullable Supply from(Recording recording, Supply before, int departure) {
    int from = departure + recording.samplesIn(WHOLE_SECONDS);
    int to = from + (int) Math.ceil(CYCLES * recording.samplesPerCycle());
    if (to > recording.length()) {
      return null;
    }
    double hertz = before.harmonics().frequencyHertz();
    Supply found = Supply.fit(recording, from, to, hertz);
    double left =
        Math.max(
            LEFT_SHARE_OF_PEAK * recording.peakVolts(), LEFT_NOISES * before.usualSpreadVolts());
    double share = found.harmonics().amplitudeVolts() / before.harmonics().amplitudeVolts();
    double slip = Math.abs(found.harmonics().frequencyHertz() - hertz);
    boolean feeds =
        share > LEAST_SHARE
            && slip < SAME_FREQUENCY_SHARE * hertz
            && !found.hasSteps()
            && found.spreadIn(recording, from, to) < left;
    return feeds ? found : null;
  }
}

package mainsgap.transfer;

import org.jspecify.annotations.Nullable;

/**
 * Fits the residue on the longest stretch after the departure that one residue explains: what comes
 * after it is a make.
 */
final class GapResidue {
  private static final double FIRST_STRETCH_SECONDS = 0.3e-3;
  private static final double LONGEST_STRETCH_SECONDS = 120e-3;
  private static final double GROWTH = 1.25;

  /** A residue explains a stretch whose samples deviate from it by less than this. */
  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;

  private static final int FEWEST_SAMPLES = 4;

  /**
   * So many longer stretches are tried after one that is not explained, once a swing would show.
   */
  private static final int MOST_FAILURES = 5;

  private GapResidue() {}

  static Residue find(Recording recording, Supply before, @Nullable Supply after, int departure) {
    double noise = before.harmonics().noiseVolts();
    double explained = Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), 1.3 * noise);
    int last = after == null ? recording.length() : after.from();
    int dead = new ArcStart(recording, before).endAfter(departure);
    int first = Math.min(dead + Departure.averagingSamples(recording), last - 1);
    double stretch = Math.max(FEWEST_SAMPLES, recording.samplesIn(FIRST_STRETCH_SECONDS));
    double longest = Math.min(last - first, recording.samplesIn(LONGEST_STRETCH_SECONDS));
    Residue best = Residue.level(0, explained, Math.min(last, first + (int) stretch));
    int failures = 0;
    while (stretch <= longest && failures < MOST_FAILURES) {
      Residue residue =
          ResidueFit.fit(
              recording,
              first,
              first + (int) stretch,
              Math.max(noise, 0.002 * recording.peakVolts()));
      if (residue.spreadVolts() < explained) {
        best = residue;
        failures = 0;
      } else if (stretch > recording.samplesPerCycle() / 2) {
        failures++;
      }
      stretch = Math.max(stretch + 1, stretch * GROWTH);
    }
    return best;
  }
}

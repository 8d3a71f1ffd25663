package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Finds a break of a contact that bounces on a load which discharges nearly as its supply falls to
 * a crossing: the voltage only bends away, and steps back a few volts where the contact makes. A
 * discharge that begins at the supply's own voltage has but an instant and a time constant, so that
 * little is enough to show it: it explains the samples to the noise, the supply explains those
 * before and behind, and these there it does not.
 */
final class BentBreak {
  private static final double MEAN_SECONDS = 30e-6;

  /** A contact has come to rest this long after a make that was located (own choice). */
  private static final double BOUNCES_SECONDS = 8e-3;

  /** A shorter deviation is no break, a longer one no bounce (own choice). */
  private static final double SHORTEST_SECONDS = 0.15e-3;

  private static final double LONGEST_SECONDS = 2.5e-3;

  /** So long before and behind it the load is fed. */
  private static final double FED_SECONDS = 0.15e-3;

  private static final int FEWEST_MEANS = 4;

  /** Half a swing of 400 Hz (own choice). */
  private static final double LONGEST_SWING_SECONDS = 1.25e-3;

  private static final double SHORTEST_DECAY_SECONDS = 20e-6;
  private static final double LONGEST_DECAY_SECONDS = 2e-3;
  private static final double DECAY_RATIO = 1.15;

  /** The contact opens within a mean, at one of so many places that are tried. */
  private static final int PLACES_IN_A_MEAN = 4;

  /** A mean tells no more than this share of nominal peak: so well is a supply known. */
  private static final double KNOWN_SHARE_OF_PEAK = 0.0012;

  /** Noise of so many times the variance of the converter's step, that in it, dithers it. */
  private static final double DITHERED = 2;

  /** By how much squared deviations, in units of the noise, shrink where there is a discharge. */
  private static final double PROVED = 36;

  /** The mean square of what is left, in units of the noise. */
  private static final double MOST_LEFT = 2.5;

  /** The step back, in units of the noise of a mean. */
  private static final double STEP_NOISES = 3;

  private final Recording recording;
  private final Supply after;
  private final double offsetVolts;
  private final int start;
  private final int width;
  private final int settled;
  private final double[] volts;
  private final double[] deviations;
  private final double[] unexplained;
  private final double variance;

  private BentBreak(
      Recording recording,
      Residue residue,
      Supply after,
      Edge first,
      Edge made,
      double noiseVolts) {
    this.recording = recording;
    this.after = after;
    this.start = (int) Math.ceil(recording.time().indexAt(first.seconds()));
    int settled = (int) Math.ceil(recording.time().indexAt(made.seconds()));
    this.width = Math.max(1, recording.samplesIn(MEAN_SECONDS));
    this.settled = (settled - start) / width;
    int end =
        Math.min(
            recording.length(), settled + recording.samplesIn(BOUNCES_SECONDS + LONGEST_SECONDS));
    int means = Math.max(0, (end - start) / width);
    this.volts = new double[means];
    this.deviations = new double[means];
    this.unexplained = new double[means];
    for (int k = 0; k < means; k++) {
      double fromArrival = 0;
      for (int i = start + k * width; i < start + (k + 1) * width; i++) {
        double seconds = recording.time().secondsAt(i);
        double fed = after.model().voltsAt(seconds);
        volts[k] += recording.volts()[i] / width;
        deviations[k] += (recording.volts()[i] - fed) / width;
        double arrived = first.covers(seconds) ? first.laterVoltsAt(seconds) : fed;
        fromArrival += (recording.volts()[i] - arrived) / width;
      }
      unexplained[k] = Math.min(deviations[k] * deviations[k], fromArrival * fromArrival);
    }
    this.offsetVolts = residue.voltsAt(recording.time().secondsAt(start));
    double known = KNOWN_SHARE_OF_PEAK * recording.peakVolts();
    this.variance = meanVariance(noiseVolts) + known * known;
  }

  /**
   * Of a mean's noise, in square volts: averaging lessens the converter's step only if it is
   * dithered.
   */
  private double meanVariance(double noiseVolts) {
    double independent = Math.max(1, after.informationShare() * width);
    double step = recording.codeVolts() * recording.codeVolts() / 12;
    double noise = noiseVolts * noiseVolts;
    return Math.max(noise / independent, noise < DITHERED * step ? step : 0);
  }

  /**
   * The one that shows best while the contact may bounce after a make; null where there is none.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   */
  static DischargedBreak.@Nullable Found after(
      Edge first,
      Edge made,
      Recording recording,
      Residue residue,
      Supply after,
      double noiseVolts) {
    return new BentBreak(recording, residue, after, first, made, noiseVolts).found();
  }

  private DischargedBreak.@Nullable Found found() {
    int fed = Math.max(2, recording.samplesIn(FED_SECONDS) / width);
    int latest = Math.min(volts.length, settled + recording.samplesIn(BOUNCES_SECONDS) / width);
    Discharge best = null;
    for (int open = fed; open < latest; open++) {
      if (isFed(open - fed, open)) {
        for (int place = 0; place < PLACES_IN_A_MEAN; place++) {
          double opened = open + (double) place / PLACES_IN_A_MEAN;
          for (double decay = SHORTEST_DECAY_SECONDS;
              decay < LONGEST_DECAY_SECONDS;
              decay *= DECAY_RATIO) {
            best = better(best, opened, decay, fed);
          }
        }
      }
    }
    return best == null || best.gain() < PROVED ? null : best.found();
  }

  /**
   * A break that is tried.
   *
   * @param firstDead the first mean that lies wholly in it
   * @param make the mean in which it ends
   * @param gain by which squared deviations, in units of the noise, are less than without it
   */
  private record Discharge(
      BentBreak in, double opened, int firstDead, int make, Residue residue, double gain) {
    DischargedBreak.Found found() {
      int from = in.start + firstDead * in.width;
      int to = in.start + (make + 1) * in.width;
      return new DischargedBreak.Found(from, to, in.start + (make - 1) * in.width, residue);
    }
  }

  /** The better of one that opens at mean {@code opened} and {@code best}. */
  private @Nullable Discharge better(
      @Nullable Discharge best, double opened, double decaySeconds, int fed) {
    double openedSeconds = recording.time().secondsAt(start + opened * width - 0.5);
    double above = after.model().voltsAt(openedSeconds) - offsetVolts;
    int firstDead = (int) Math.ceil(opened);
    int fewest = Math.max(FEWEST_MEANS, recording.samplesIn(SHORTEST_SECONDS) / width);
    int longest = recording.samplesIn(LONGEST_SECONDS) / width;
    double gain = 0;
    double left = 0;
    Discharge better = best;
    for (int k = firstDead; k < Math.min(firstDead + longest, volts.length - 1 - fed); k++) {
      double seconds = recording.time().secondsAt(start + k * width + (width - 1) / 2.0);
      double model = offsetVolts + above * Math.exp((openedSeconds - seconds) / decaySeconds);
      double off = (volts[k] - model) * (volts[k] - model) / variance;
      left += off;
      gain += unexplained[k] / variance - off;
      int dead = k + 1 - firstDead;
      boolean isBetter =
          dead >= fewest
              && k + 1 > settled
              && gain > (better == null ? 0 : better.gain())
              && left < MOST_LEFT * dead
              && Math.abs(deviations[k]) > STEP_NOISES * Math.sqrt(variance)
              && !isRing(firstDead, Math.signum(deviations[k]))
              && isFed(k + 2, k + 2 + fed);
      if (isBetter) {
        Residue residue =
            new Residue(
                openedSeconds,
                offsetVolts,
                decaySeconds,
                0,
                above,
                0,
                Math.sqrt(variance * width),
                start + (k + 1) * width);
        better = new Discharge(this, opened, firstDead, k + 1, residue, gain);
      }
    }
    return better;
  }

  /** A ring has swung to the other side just before. */
  private boolean isRing(int before, double sign) {
    int swing = recording.samplesIn(LONGEST_SWING_SECONDS) / width;
    double most = STEP_NOISES * Math.sqrt(variance);
    for (int k = Math.max(0, before - swing); k < before; k++) {
      if (sign * deviations[k] < -most) {
        return true;
      }
    }
    return false;
  }

  /** Whether the supply explains these means. */
  private boolean isFed(int from, int to) {
    double squares = 0;
    for (int k = from; k < Math.min(to, volts.length); k++) {
      squares += deviations[k] * deviations[k];
    }
    return squares < MOST_LEFT * variance * (to - from);
  }
}

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
  /** A shorter bend is no break (own choice). */
  private static final double SHORTEST_SECONDS = 0.15e-3;

  private static final int FEWEST_MEANS = 4;

  /** So long before and behind it the load is fed (own choice). */
  private static final double FED_SECONDS = 0.15e-3;

  /** Where a supply is farther from what a load discharges to, no break hides in a bend. */
  private static final double NEAR_SHARE_OF_PEAK = 0.2;

  /** The contact opens within a mean, at one of so many places that are tried. */
  private static final int PLACES_IN_A_MEAN = 8;

  /** From 80 V on neighbours differ by less than a volt. */
  private static final double DECAY_RATIO = 1.03;

  /**
   * By how much squared deviations, in units of the noise, shrink where there is a discharge: the
   * price of a change of model.
   */
  private static final double PROVED = 36;

  private final Supply after;
  private final Residue residue;
  private final FedMeans means;
  private final double nearVolts;
  private final double noiseVolts;
  private final int firstMake;
  private final int lastMake;
  private final int fed;
  private final int fewest;
  private final int longest;

  /**
   * Behind the makes of one return.
   *
   * @param first the first make, with the shape in which the supply arrives
   * @param made the last make that was located
   * @param noiseVolts the standard deviation of one sample's noise
   */
  BentBreak(
      Recording recording,
      Residue residue,
      Supply after,
      Edge first,
      Edge made,
      double noiseVolts) {
    int index = (int) Math.ceil(recording.time().indexAt(made.seconds()));
    double reach = OpenedAgain.BOUNCES_SECONDS + OpenedAgain.LONGEST_SECONDS;
    int end = index + recording.samplesIn(reach);
    this.after = after;
    this.residue = residue;
    this.means = new FedMeans(recording, after, first, end, noiseVolts);
    this.noiseVolts = noiseVolts;
    this.nearVolts = NEAR_SHARE_OF_PEAK * recording.peakVolts();
    this.fed = Math.max(2, means.in(FED_SECONDS));
    this.fewest = Math.max(FEWEST_MEANS, means.in(SHORTEST_SECONDS));
    this.longest = means.in(OpenedAgain.LONGEST_SECONDS);
    this.firstMake = Math.max(means.at(index) + 1, fed + fewest);
    this.lastMake = Math.min(means.at(end), means.count() - 1 - fed);
  }

  /** The one that shows best while the contact may bounce; null where there is none. */
  @Nullable OpenedAgain found() {
    if (residue.isMotor()) {
      return null;
    }
    Discharge best = null;
    for (int make = firstMake; make <= lastMake; make++) {
      if (isMake(make)) {
        best = endingIn(make, best);
      }
    }
    return best == null
        ? null
        : new OpenedAgain(
            means.sampleAt(best.from),
            means.sampleAt(best.make + 1),
            means.sampleAt(best.make - 1),
            best.residue);
  }

  /** Up to it the load is off its supply, which is near a crossing and feeds behind. */
  private boolean isMake(int make) {
    double supplied = after.model().voltsAt(means.secondsAt(make));
    return means.side(make - 1) != 0
        && means.isFed(make + 1, make + 1 + fed)
        && Math.abs(supplied - residue.offsetVolts()) < nearVolts;
  }

  /**
   * A break that is shown.
   *
   * @param from the first mean that lies wholly in it
   * @param make the mean in which it ends
   * @param gain by which squared deviations, in units of the noise, are less than without it
   */
  private record Discharge(int from, int make, Residue residue, double gain) {}

  /** The one that shows best of those that end in mean {@code make} and {@code known}. */
  private @Nullable Discharge endingIn(int make, @Nullable Discharge known) {
    Discharge best = known;
    for (int open = Math.max(fed, make - longest); open <= make - fewest; open++) {
      if (means.isFed(open - fed, open) && !isRing(open, means.side(make - 1))) {
        for (int place = 0; place < PLACES_IN_A_MEAN; place++) {
          best = openedIn(open, (double) place / PLACES_IN_A_MEAN, make, best);
        }
      }
    }
    return best;
  }

  /** The same of those that begin at {@code place}, from 0 to less than 1, in mean {@code open}. */
  private @Nullable Discharge openedIn(
      int open, double place, int make, @Nullable Discharge known) {
    int from = place == 0 ? open : open + 1;
    double openedSeconds = means.secondsAt(open + place);
    double above = after.model().voltsAt(openedSeconds) - residue.offsetVolts();
    double beside = means.besideVolts(open, make, fed);
    double without =
        Math.min(means.unexplained(from, make), means.squaresAbout(beside, from, make));
    Discharge best = known;
    for (double decay = OpenedAgain.SHORTEST_DECAY_SECONDS;
        decay < OpenedAgain.LONGEST_DECAY_SECONDS;
        decay *= DECAY_RATIO) {
      double most = without - (best == null ? PROVED : best.gain);
      double left = left(from, make, openedSeconds, decay, above, most);
      if (left < most && FedMeans.isExplained(left, make - from)) {
        Residue discharge = discharge(openedSeconds, decay, above, make);
        best = new Discharge(from, make, discharge, without - left);
      }
    }
    return best;
  }

  private Residue discharge(double openedSeconds, double decaySeconds, double above, int make) {
    double offset = residue.offsetVolts();
    int to = means.sampleAt(make);
    return new Residue(openedSeconds, offset, decaySeconds, 0, above, 0, noiseVolts, to);
  }

  /** What a discharge leaves of means, squared, in units of the noise; {@code most} or more. */
  private double left(
      int from, int make, double openedSeconds, double decaySeconds, double above, double most) {
    double each = Math.exp((means.secondsAt(0) - means.secondsAt(1)) / decaySeconds);
    double since = means.secondsAt(from + 0.5) - openedSeconds;
    double discharged = above * Math.exp(-since / decaySeconds) * means.averaged(decaySeconds);
    double left = 0;
    for (int k = from; k < make && left < most; k++) {
      left += means.inNoise(means.voltsAt(k) - residue.offsetVolts() - discharged);
      discharged *= each;
    }
    return left;
  }

  /** A ring has swung to the other side just before. */
  private boolean isRing(int open, int side) {
    int swing = means.in(OpenedAgain.LONGEST_SWING_SECONDS);
    for (int k = Math.max(1, open - swing); k < open; k++) {
      if (means.side(k - 1) == -side && means.side(k) == -side) {
        return true;
      }
    }
    return false;
  }
}

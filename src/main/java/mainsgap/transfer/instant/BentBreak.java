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

  /** By how much squared deviations, in units of the noise, shrink where there is a discharge. */
  private static final double PROVED = 36;

  private final Supply after;
  private final FedMeans means;
  private final double offsetVolts;
  private final int settled;
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
    int end = index + recording.samplesIn(BOUNCES_SECONDS + LONGEST_SECONDS);
    this.after = after;
    this.means = new FedMeans(recording, after, first, end, noiseVolts);
    this.offsetVolts = residue.voltsAt(first.seconds());
    this.settled = means.at(index);
    this.fed = Math.max(2, means.in(FED_SECONDS));
    this.fewest = Math.max(FEWEST_MEANS, means.in(SHORTEST_SECONDS));
    this.longest = means.in(LONGEST_SECONDS);
  }

  /** The one that shows best while the contact may bounce; null where there is none. */
  DischargedBreak.@Nullable Found found() {
    int latest = Math.min(means.count(), settled + means.in(BOUNCES_SECONDS));
    Discharge best = null;
    for (int open = fed; open < latest; open++) {
      if (means.isFed(open - fed, open)) {
        for (int place = 0; place < PLACES_IN_A_MEAN; place++) {
          best = better(best, open + (double) place / PLACES_IN_A_MEAN);
        }
      }
    }
    return best == null
        ? null
        : new DischargedBreak.Found(
            means.sampleAt(best.from),
            means.sampleAt(best.make + 1),
            means.sampleAt(best.make - 1),
            best.residue);
  }

  /**
   * A break that is shown.
   *
   * @param from the first mean that lies wholly in it
   * @param make the mean in which it ends
   * @param gain by which squared deviations, in units of the noise, are less than without it
   */
  private record Discharge(int from, int make, Residue residue, double gain) {}

  /** The best that opens {@code opened} means from the first make, or {@code best}. */
  private @Nullable Discharge better(@Nullable Discharge best, double opened) {
    Discharge better = best;
    for (double decay = SHORTEST_DECAY_SECONDS;
        decay < LONGEST_DECAY_SECONDS;
        decay *= DECAY_RATIO) {
      better = better(better, opened, decay);
    }
    return better;
  }

  private @Nullable Discharge better(@Nullable Discharge best, double opened, double decaySeconds) {
    Discharge better = best;
    double openedSeconds = means.secondsAt(opened);
    double above = after.model().voltsAt(openedSeconds) - offsetVolts;
    int from = (int) Math.ceil(opened);
    double supplied = 0;
    double left = 0;
    for (int make = from + 1; make <= Math.min(from + longest, means.count() - 1 - fed); make++) {
      double since = means.secondsAt(make - 0.5) - openedSeconds;
      double model = offsetVolts + above * Math.exp(-since / decaySeconds);
      left += means.inNoise(means.voltsAt(make - 1) - model);
      supplied += means.unexplained(make - 1);
      double least = better == null ? PROVED : better.gain;
      if (supplied - left > least && isBreak(from, make, left)) {
        double beside = means.besideVolts((int) opened, make, fed);
        double gain = Math.min(supplied, means.squaresAbout(beside, from, make)) - left;
        if (gain > least) {
          double spread = means.sampleVolts();
          int to = means.sampleAt(make);
          better =
              new Discharge(
                  from,
                  make,
                  new Residue(openedSeconds, offsetVolts, decaySeconds, 0, above, 0, spread, to),
                  gain);
        }
      }
    }
    return better;
  }

  /** It ends off the supply, which feeds behind it; what a discharge leaves there is noise. */
  private boolean isBreak(int from, int make, double left) {
    int side = means.side(make - 1);
    return make - from >= fewest
        && make > settled
        && FedMeans.isExplained(left, make - from)
        && side != 0
        && !isRing(from, side)
        && means.isFed(make + 1, make + 1 + fed);
  }

  /** A ring has swung to the other side just before. */
  private boolean isRing(int from, int side) {
    for (int k = Math.max(0, from - means.in(LONGEST_SWING_SECONDS)); k < from; k++) {
      if (means.side(k) == -side) {
        return true;
      }
    }
    return false;
  }
}

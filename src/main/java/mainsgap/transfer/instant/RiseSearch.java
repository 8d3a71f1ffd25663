package mainsgap.transfer.instant;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import mainsgap.transfer.edge.Minimum;
import mainsgap.transfer.edge.Rise;

/**
 * Searches the instant from which a supply rises out of one residue, once for each way to rise: on
 * long averages everywhere, on short ones about what was found. The instant is the mean over both
 * ways and all instants, weighted by how well they explain the samples.
 */
final class RiseSearch {
  /** Rises are searched in these times. */
  private static final double SHORTEST_RISE_SECONDS = 0.5e-3;

  private static final double LONGEST_RISE_SECONDS = 100e-3;
  private static final double RISE_RATIO = 1.6;

  /** A rise that was found is off by less than this ratio; its best value is found to this part. */
  private static final double FOUND_RATIO = 1.2;

  private static final double RISE_TOLERANCE_SHARE = 2e-3;
  private static final int COARSE_INSTANTS = 40;

  /** The fine search starts within so many coarse averages. */
  private static final double FINE_REACH_AVERAGES = 8;

  /** Instant and rise are refined in turn, in rounds each of which reaches a third as far. */
  private static final int ROUNDS = 4;

  private static final double NARROWING = 3;

  /** A minimum is found to this part of its reach. */
  private static final double TOLERANCE_SHARE = 1e-2;

  private static final int COARSE_AVERAGES = 400;
  private static final int AVERAGES = 2_000;

  /** Instants on both sides of the best one, over so many of its standard deviations. */
  private static final int INSTANTS = 24;

  private static final double REACH = 5;

  /** No instant of a rise is less certain than this. */
  private static final double LONGEST_REACH_SECONDS = 20e-3;

  private static final double REACH_GROWTH = 1.4;

  private final RiseFit fine;
  private final List<Found> found;
  private final Found best;

  /** The best rise of one way, and the sum of squares that it leaves. */
  record Found(Rise rise, double seconds, double riseSeconds, double squares) {}

  /** An instant and its standard deviation. */
  record Instant(double seconds, double standardSeconds) {}

  private RiseSearch(RiseFit fine, List<Found> rough, double reachSeconds) {
    this.fine = fine;
    this.found = rough.stream().map(one -> refined(fine, one, reachSeconds)).toList();
    this.best = Collections.min(found, Comparator.comparingDouble(Found::squares));
  }

  /** Searches a stretch for instants everywhere. */
  static RiseSearch in(RisingStretch stretch) {
    RiseFit coarse = stretch.inBlocks(COARSE_AVERAGES);
    List<Found> rough =
        Arrays.stream(Rise.values()).map(rise -> searched(coarse, rise, stretch)).toList();
    return new RiseSearch(
        stretch.inBlocks(AVERAGES), rough, FINE_REACH_AVERAGES * coarse.intervalSeconds());
  }

  /** Searches a stretch, whose models are a little other ones, about what was found. */
  RiseSearch again(RisingStretch stretch) {
    double reach = FINE_REACH_AVERAGES * fine.intervalSeconds();
    return new RiseSearch(stretch.inBlocks(AVERAGES), found, reach);
  }

  Found best() {
    return best;
  }

  /** The samples, averaged as finely as they were searched. */
  RiseFit fit() {
    return fine;
  }

  /** The standard deviation of the averages about the best rise. */
  double spreadVolts() {
    return Math.sqrt(best.squares / fine.freedom());
  }

  /** The mean of the instants, for averages that spread by {@code spreadVolts}. */
  Instant instant(double spreadVolts) {
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (Found one : found) {
      double step = step(one, spreadVolts);
      for (int k = -INSTANTS; k <= INSTANTS; k++) {
        double seconds = one.seconds + k * step;
        double worse = Math.max(0, at(fine, one, seconds).squares - best.squares);
        double weight = step * Math.exp(-worse / (2 * spreadVolts * spreadVolts));
        double offset = seconds - best.seconds;
        sum += weight;
        mean += weight * offset;
        square += weight * offset * offset;
      }
    }
    mean /= sum;
    return new Instant(best.seconds + mean, Math.sqrt(Math.max(0, square / sum - mean * mean)));
  }

  private static Found searched(RiseFit coarse, Rise rise, RisingStretch stretch) {
    double first = stretch.firstSeconds();
    double latest = stretch.latestSeconds();
    Found best = new Found(rise, first, SHORTEST_RISE_SECONDS, Double.POSITIVE_INFINITY);
    for (double riseSeconds = SHORTEST_RISE_SECONDS;
        riseSeconds < LONGEST_RISE_SECONDS;
        riseSeconds *= RISE_RATIO) {
      for (int k = 0; k < COARSE_INSTANTS; k++) {
        double seconds = first + (latest - first) * k / COARSE_INSTANTS;
        double squares = coarse.squares(rise, seconds, riseSeconds);
        if (squares < best.squares) {
          best = new Found(rise, seconds, riseSeconds, squares);
        }
      }
    }
    double step = (latest - first) / COARSE_INSTANTS;
    return refined(coarse, refined(coarse, best, step), step);
  }

  private static Found refined(RiseFit fit, Found start, double firstReach) {
    Found best = at(fit, start, start.seconds);
    double reach = firstReach;
    for (int round = 0; round < ROUNDS; round++) {
      Found about = best;
      double seconds =
          Minimum.between(
              about.seconds - reach,
              about.seconds + reach,
              TOLERANCE_SHARE * reach,
              at -> at(fit, about, at).squares);
      Found found = at(fit, about, seconds);
      best = found.squares < best.squares ? found : best;
      reach /= NARROWING;
    }
    return best;
  }

  /** The best rise for an instant near that of another one. */
  private static Found at(RiseFit fit, Found about, double seconds) {
    double near = about.riseSeconds;
    if (about.rise == Rise.LINEAR) {
      near = Math.max(SHORTEST_RISE_SECONDS, near + about.seconds - seconds);
    }
    double riseSeconds = bestRise(fit, about.rise, seconds, near);
    return new Found(
        about.rise, seconds, riseSeconds, fit.squares(about.rise, seconds, riseSeconds));
  }

  private static double bestRise(RiseFit fit, Rise rise, double seconds, double about) {
    double ratio = Math.log(FOUND_RATIO);
    double logarithm =
        Minimum.between(
            Math.log(about) - ratio,
            Math.log(about) + ratio,
            RISE_TOLERANCE_SHARE * ratio,
            log -> fit.squares(rise, seconds, Math.exp(log)));
    return Math.exp(logarithm);
  }

  /** Such that the instants on each side end where they explain little. */
  private double step(Found one, double spread) {
    double reach = fine.intervalSeconds() / 8;
    double most = REACH * REACH * spread * spread;
    while (reach < LONGEST_REACH_SECONDS && Math.min(lost(one, reach), lost(one, -reach)) < most) {
      reach *= REACH_GROWTH;
    }
    return reach / INSTANTS;
  }

  private double lost(Found one, double offset) {
    return at(fine, one, one.seconds + offset).squares - one.squares;
  }
}

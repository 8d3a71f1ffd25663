package mainsgap.transfer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Locates the return of a supply whose amplitude comes up over milliseconds: there is no step, only
 * a kink. What was left on the load, the instant, how fast the amplitude rises and the amplitude
 * and phase of the supply are fitted together from the loss to the risen supply, once for a rise
 * that is exponential and once for a linear one; the instant is the mean over both weighted by how
 * well they explain the samples.
 */
final class RisingReturn {
  /** A supply that comes at once follows its model after this. */
  private static final double AT_ONCE_SECONDS = 1e-3;

  private static final double AT_ONCE_SHARE_OF_PEAK = 0.006;
  private static final double AT_ONCE_NOISES = 1.3;

  /** An explanation that leaves more than this share of nominal peak is none. */
  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;

  private static final double EXPLAINED_NOISES = 1.5;

  /** Where breaks seem to be, a rise has to explain better that there are none. */
  private static final double PROVED_SHARE_OF_PEAK = 0.005;

  private static final double PROVED_NOISES = 1.2;
  private static final int FEWEST_SAMPLES = 40;

  /**
   * What rises faster is told from no bouncing make (contacts bounce for less, common practice).
   */
  private static final double BOUNCE_SECONDS = 1.5e-3;

  /** Rises are searched in these times. */
  private static final double SHORTEST_RISE_SECONDS = 0.5e-3;

  private static final double LONGEST_RISE_SECONDS = 100e-3;
  private static final double RISE_RATIO = 1.25;
  private static final int COARSE_INSTANTS = 60;
  private static final int ROUNDS = 4;
  private static final int COARSE_AVERAGES = 400;
  private static final int AVERAGES = 2_000;

  /** Instants on both sides of the best one, over so many of its standard deviations. */
  private static final int INSTANTS = 24;

  private static final double REACH = 5;

  /** Real rises have these shapes only nearly; calibrated on generated captures. */
  private static final double AMBIGUITY = 1.6;

  private final Recording recording;
  private final Supply after;
  private final Residue residue;
  private final double noiseVolts;
  private final int from;
  private final int to;

  /**
   * Takes what is known.
   *
   * @param opened the last opening before
   */
  RisingReturn(Recording recording, Supply before, Residue residue, Supply after, Edge opened) {
    this.recording = recording;
    this.after = after;
    this.residue = residue;
    this.noiseVolts = before.harmonics().noiseVolts();
    int guard = recording.samplesIn(2 * opened.standardSeconds()) + 2;
    this.from = (int) Math.ceil(recording.time().indexAt(opened.seconds())) + guard;
    this.to = Math.min(recording.length(), after.from() + (int) (recording.samplesPerCycle() / 2));
  }

  /**
   * The return; null where the supply came at once, or where a rise explains less than what was
   * found.
   *
   * @param found the return as a shape of its own
   * @param bounced whether breaks were found about it
   */
  @Nullable Edge locate(Edge found, boolean bounced) {
    boolean isShort = to - from < FEWEST_SAMPLES;
    return after.hasSteps() || isShort || isAtOnce(found) ? null : risen(found, bounced);
  }

  private boolean isAtOnce(Edge rough) {
    if (rough.shape() == EdgeShape.RING) {
      return false;
    }
    double made = recording.time().indexAt(rough.seconds());
    int first = (int) Math.ceil(made + AT_ONCE_SECONDS / recording.time().intervalSeconds());
    int end = (int) Math.min(to, made + recording.samplesPerCycle());
    double squares = 0;
    for (int i = first; i < end; i++) {
      double seconds = recording.time().secondsAt(i);
      double deviation = recording.volts()[i] - after.model().voltsAt(seconds);
      squares += deviation * deviation;
    }
    double rms = Math.sqrt(squares / Math.max(1, end - first));
    return rms
        < Math.max(
            AT_ONCE_SHARE_OF_PEAK * recording.peakVolts(),
            AT_ONCE_NOISES * Math.max(noiseVolts, after.harmonics().noiseVolts()));
  }

  private record Found(RiseFit.Rise rise, double seconds, double riseSeconds, double squares) {}

  private @Nullable Edge risen(Edge rough, boolean bounced) {
    RiseFit coarse = fit(COARSE_AVERAGES);
    RiseFit fine = fit(AVERAGES);
    double latest = latestSeconds();
    List<Found> found = new ArrayList<>();
    for (RiseFit.Rise rise : RiseFit.Rise.values()) {
      found.add(refined(fine, searched(coarse, rise, latest), 8 * coarse.intervalSeconds()));
    }
    Found best = Collections.min(found, Comparator.comparingDouble(Found::squares));
    double spread = Math.sqrt(best.squares / fine.freedom());
    double averaged = noiseVolts / Math.sqrt(fine.averaged());
    double share = bounced ? PROVED_SHARE_OF_PEAK : EXPLAINED_SHARE_OF_PEAK;
    double noises = bounced ? PROVED_NOISES : EXPLAINED_NOISES;
    boolean isExplained = spread < Math.max(share * recording.peakVolts(), noises * averaged);
    boolean isRise = best.riseSeconds > BOUNCE_SECONDS;
    return isRise
            && isExplained
            && (bounced || best.squares < fine.squares(at -> voltsOf(rough, at)))
        ? edge(fine, found, best, Math.max(spread, averaged), rough)
        : null;
  }

  private double voltsOf(Edge rough, double seconds) {
    if (seconds < rough.seconds()) {
      return residue.voltsAt(seconds);
    }
    return rough.covers(seconds) ? rough.laterVoltsAt(seconds) : after.model().voltsAt(seconds);
  }

  private RiseFit fit(int averages) {
    return RiseFit.of(recording, residue, after, from, to, Math.max(1, (to - from) / averages));
  }

  /** The supply has come by the middle of the stretch up to its own fit. */
  private double latestSeconds() {
    return recording.time().secondsAt(to - recording.samplesPerCycle() / 2);
  }

  private Found searched(RiseFit coarse, RiseFit.Rise rise, double latest) {
    double first = recording.time().secondsAt(from);
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
    return refined(coarse, best, step);
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
              1e-2 * reach,
              at -> at(fit, about, at).squares);
      Found found = at(fit, about, seconds);
      best = found.squares < best.squares ? found : best;
      reach /= 3;
    }
    return best;
  }

  /** The best rise for an instant near that of another one. */
  private static Found at(RiseFit fit, Found about, double seconds) {
    double near = about.riseSeconds;
    if (about.rise == RiseFit.Rise.LINEAR) {
      near = Math.max(SHORTEST_RISE_SECONDS, near + about.seconds - seconds);
    }
    double riseSeconds = bestRise(fit, about.rise, seconds, near);
    return new Found(
        about.rise, seconds, riseSeconds, fit.squares(about.rise, seconds, riseSeconds));
  }

  private static double bestRise(RiseFit fit, RiseFit.Rise rise, double seconds, double about) {
    double ratio = Math.log(RISE_RATIO);
    double logarithm =
        Minimum.between(
            Math.log(about) - ratio,
            Math.log(about) + ratio,
            1e-2 * ratio,
            log -> fit.squares(rise, seconds, Math.exp(log)));
    return Math.exp(logarithm);
  }

  private Edge edge(RiseFit fit, List<Found> found, Found best, double spread, Edge rough) {
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (Found one : found) {
      double step = step(fit, one, spread);
      for (int k = -INSTANTS; k <= INSTANTS; k++) {
        double seconds = one.seconds + k * step;
        double worse = Math.max(0, at(fit, one, seconds).squares - best.squares);
        double weight = step * Math.exp(-worse / (2 * spread * spread));
        double offset = seconds - best.seconds;
        sum += weight;
        mean += weight * offset;
        square += weight * offset * offset;
      }
    }
    mean /= sum;
    double standard = Math.sqrt(Math.max(0, square / sum - mean * mean));
    return new Edge(
        best.seconds + mean,
        recording.time().intervalSeconds() / Math.sqrt(12),
        AMBIGUITY * standard,
        0,
        best.rise.shape(),
        rough.window(),
        rough.laterVolts());
  }

  /** Such that the instants on each side end where they explain little. */
  private static double step(RiseFit fit, Found one, double spread) {
    double reach = fit.intervalSeconds() / 8;
    double most = REACH * REACH * spread * spread;
    while (reach < 20e-3 && Math.min(lost(fit, one, reach), lost(fit, one, -reach)) < most) {
      reach *= 1.4;
    }
    return reach / INSTANTS;
  }

  private static double lost(RiseFit fit, Found one, double offset) {
    return at(fit, one, one.seconds + offset).squares - one.squares;
  }
}

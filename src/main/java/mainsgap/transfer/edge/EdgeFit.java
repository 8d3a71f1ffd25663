package mainsgap.transfer.edge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Locates the instant at which the voltage leaves one model for another. Each {@link EdgeShape} is
 * tried at candidate instants; what comes out is the mean of the instants weighted by how well they
 * explain the samples (Bayesian information criterion), and their spread, so that an instant near a
 * crossing of the models, or one that several shapes explain, is uncertain by as much as it is.
 */
public final class EdgeFit {
  /** Candidate instants of the coarse search of a shape with times of its own. */
  private static final int COARSE_CANDIDATES = 80;

  /** Away from the best instant candidates thin out by this factor a step. */
  private static final double THINNING = 1.25;

  /** A shape's times are refined in so many rounds, each to this part of the grid's ratio. */
  private static final int ROUNDS = 3;

  /** A search for a time comes down to this part of its reach (own choice). */
  private static final double NARROWED = 0.026;

  /** From one instant to the next the best time changes by no more. */
  private static final double RIDGE_RATIO = 1.5;

  private final EdgeWindow window;
  private final WeighedWindow weighed;
  private final int first;
  private final int last;

  /** Cost of all samples but those of a transient, for a change at each sample. */
  private final double[] bareCost;

  private record Best(int sample, EdgeShape.Setting setting, double cost) {}

  private EdgeFit(EdgeWindow window, int first, int last) {
    this.window = window;
    this.weighed = WeighedWindow.of(window);
    this.first = first;
    this.last = last;
    this.bareCost = bareCosts(window);
  }

  /**
   * Locates the change.
   *
   * @param first the first sample that may be the first of the later model
   * @param last the last such sample; at least {@code first}
   */
  public static Edge locate(EdgeWindow window, int first, int last, Set<EdgeShape> shapes) {
    EdgeFit fit = new EdgeFit(window, first, last);
    List<EdgeCandidate> candidates = new ArrayList<>();
    for (EdgeShape shape : shapes) {
      Best best = fit.bestOf(shape);
      fit.collect(shape, best, candidates);
    }
    return new EdgeMean(window, last).of(candidates);
  }

  private static double[] bareCosts(EdgeWindow window) {
    int n = window.length();
    double[] cost = new double[n + 1];
    for (int i = 0; i < n; i++) {
      cost[0] += window.laterCost(i);
    }
    for (int i = 0; i < n; i++) {
      cost[i + 1] = cost[i] + window.earlierCost(i) - window.laterCost(i);
    }
    return cost;
  }

  private double cost(EdgeShape shape, EdgeShape.Setting setting, int sample) {
    return bareCost[sample] + shape.extraCost(weighed, sample, setting);
  }

  private Best bestOf(EdgeShape shape) {
    int step = shape == EdgeShape.ABRUPT ? 1 : Math.max(1, (last - first + 1) / COARSE_CANDIDATES);
    Best best = new Best(first, EdgeShape.NO_SETTING, Double.POSITIVE_INFINITY);
    for (EdgeShape.Setting setting : shape.settings(window.time().intervalSeconds())) {
      double[] extra = ShapeSweep.extraCosts(shape, weighed, first, last, setting);
      for (int sample = first; sample <= last; sample += step) {
        double cost = bareCost[sample] + extra[sample - first];
        if (cost < best.cost) {
          best = new Best(sample, setting, cost);
        }
      }
    }
    return shape == EdgeShape.ABRUPT || Double.isInfinite(best.cost)
        ? best
        : refined(shape, best, step);
  }

  /** Improves the instant and the shape's own times in turn. */
  private Best refined(EdgeShape shape, Best coarse, int step) {
    Best best = coarse;
    double ratio = shape.gridRatio();
    int reach = step;
    for (int round = 0; round < ROUNDS; round++) {
      best = refinedTimes(shape, best, ratio);
      best = refinedInstant(shape, best, reach);
      ratio = Math.sqrt(ratio);
      reach = Math.max(2, reach / 3);
    }
    return shape == EdgeShape.APPROACH ? alongRidge(shape, best, step) : best;
  }

  /** Instant and time trade off: the instant moves with the best time for it, ever less far. */
  private Best alongRidge(EdgeShape shape, Best start, int reach) {
    Best best = start;
    for (int by = Math.max(2, reach); by >= 1; by /= 2) {
      for (int direction = -1; direction <= 1; direction += 2) {
        boolean isBetter = true;
        while (isBetter) {
          int sample = best.sample + direction * by;
          Best next = sample < first || sample > last ? best : timed(shape, sample, best.setting);
          isBetter = next.cost < best.cost;
          best = isBetter ? next : best;
        }
      }
    }
    return best;
  }

  /** The best time near another one, for a change at a sample. */
  private Best timed(EdgeShape shape, int sample, EdgeShape.Setting near) {
    double seconds =
        minimum(
            near.seconds(),
            RIDGE_RATIO,
            s -> cost(shape, new EdgeShape.Setting(s, near.hertz()), sample));
    EdgeShape.Setting setting = new EdgeShape.Setting(seconds, near.hertz());
    return new Best(sample, setting, cost(shape, setting, sample));
  }

  private Best refinedTimes(EdgeShape shape, Best best, double ratio) {
    Best start = best;
    double seconds =
        minimum(
            start.setting.seconds(),
            ratio,
            s -> cost(shape, new EdgeShape.Setting(s, start.setting.hertz()), start.sample));
    EdgeShape.Setting timed = new EdgeShape.Setting(seconds, start.setting.hertz());
    if (shape == EdgeShape.RING) {
      double hertz =
          minimum(
              timed.hertz(),
              ratio,
              h -> cost(shape, new EdgeShape.Setting(seconds, h), start.sample));
      timed = new EdgeShape.Setting(seconds, hertz);
    }
    double cost = cost(shape, timed, start.sample);
    return cost < start.cost ? new Best(start.sample, timed, cost) : start;
  }

  private Best refinedInstant(EdgeShape shape, Best best, int reach) {
    Best better = best;
    int fine = Math.max(1, reach / 10);
    int from = Math.max(first, best.sample - reach);
    int to = Math.min(last, best.sample + reach);
    double[] extra = ShapeSweep.extraCosts(shape, weighed, from, to, best.setting);
    for (int sample = from; sample <= to; sample += fine) {
      double cost = bareCost[sample] + extra[sample - from];
      if (cost < better.cost) {
        better = new Best(sample, best.setting, cost);
      }
    }
    return better;
  }

  /** The place of the lowest {@code f} between {@code x / ratio} and {@code x * ratio}. */
  private static double minimum(double x, double ratio, DoubleUnaryOperator f) {
    double reach = Math.log(ratio);
    double found =
        Minimum.between(
            -reach, reach, NARROWED * reach, ofLog -> f.applyAsDouble(x * Math.exp(ofLog)));
    return x * Math.exp(found);
  }

  /** Candidates about the best instant, ever further apart, until they explain nothing. */
  private void collect(EdgeShape shape, Best best, List<EdgeCandidate> candidates) {
    if (Double.isInfinite(best.cost)) {
      return;
    }
    if (shape == EdgeShape.ABRUPT) {
      for (int sample = first; sample <= last; sample++) {
        candidates.add(new EdgeCandidate(sample, 1, shape, best.setting, bareCost[sample]));
      }
      return;
    }
    candidates.add(new EdgeCandidate(best.sample, 1, shape, best.setting, best.cost));
    double[] profile = shape == EdgeShape.APPROACH ? null : profile(shape, best.setting);
    collectTowards(shape, best, profile, candidates, 1);
    collectTowards(shape, best, profile, candidates, -1);
  }

  /**
   * The same on one side.
   *
   * @param profile the lowest cost at each instant; null where it is to be found on the way
   */
  private void collectTowards(
      EdgeShape shape,
      Best best,
      double @Nullable [] profile,
      List<EdgeCandidate> candidates,
      int direction) {
    double temper = window.informationShare();
    double step = 1;
    double offset = 1;
    Best nearest = best;
    while (true) {
      int sample = best.sample + direction * (int) Math.round(offset);
      if (sample < first || sample > last) {
        return;
      }
      nearest = profile == null ? timed(shape, sample, nearest.setting) : nearest;
      double cost = profile == null ? nearest.cost : profile[sample - first];
      candidates.add(new EdgeCandidate(sample, step, shape, nearest.setting, cost));
      if ((cost - best.cost) * temper > 2 * Moments.NEGLIGIBLE) {
        return;
      }
      step = Math.max(1, step * THINNING);
      offset += step;
    }
  }

  /** The lowest cost at each instant for times about the best ones: instant and time trade off. */
  private double[] profile(EdgeShape shape, EdgeShape.Setting setting) {
    double[] lowest = new double[last - first + 1];
    Arrays.fill(lowest, Double.POSITIVE_INFINITY);
    for (double factor : shape.profileFactors()) {
      EdgeShape.Setting near = new EdgeShape.Setting(setting.seconds() * factor, setting.hertz());
      double[] extra = ShapeSweep.extraCosts(shape, weighed, first, last, near);
      for (int k = 0; k < lowest.length; k++) {
        lowest[k] = Math.min(lowest[k], bareCost[first + k] + extra[k]);
      }
    }
    return lowest;
  }
}

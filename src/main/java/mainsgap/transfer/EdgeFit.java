package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Locates the instant at which the voltage leaves one model for another. Each {@link EdgeShape} is
 * tried at candidate instants; what comes out is the mean of the instants weighted by how well they
 * explain the samples (Bayesian information criterion), and their spread, so that an instant near a
 * crossing of the models, or one that several shapes explain, is uncertain by as much as it is.
 */
final class EdgeFit {
  /** Candidate instants of the first, coarse pass. */
  private static final int COARSE_CANDIDATES = 100;

  /** Explanations worse than the best by more than this (-2 ln p) carry no weight. */
  private static final double NEGLIGIBLE = 40;

  private final EdgeWindow window;
  private final int first;
  private final int last;

  /** Cost of all samples but those of a transient, for a change at each sample. */
  private final double[] bareCost;

  private final List<Candidate> candidates = new ArrayList<>();

  private record Candidate(int sample, int width, EdgeShape shape, double cost) {}

  private record Setting(double seconds, double hertz) {}

  private EdgeFit(EdgeWindow window, int first, int last) {
    this.window = window;
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
  static Edge locate(EdgeWindow window, int first, int last, Set<EdgeShape> shapes) {
    EdgeFit fit = new EdgeFit(window, first, last);
    for (EdgeShape shape : shapes) {
      fit.tryShape(shape);
    }
    return fit.weigh();
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

  private void tryShape(EdgeShape shape) {
    int step = shape == EdgeShape.ABRUPT ? 1 : Math.max(1, (last - first + 1) / COARSE_CANDIDATES);
    double interval = window.time().intervalSeconds();
    for (double seconds : shape.timesSeconds(interval)) {
      for (double hertz : shape.frequenciesHertz(interval)) {
        tryTimes(shape, new Setting(seconds, hertz), step);
      }
    }
  }

  private void tryTimes(EdgeShape shape, Setting setting, int step) {
    int best = first;
    double bestCost = Double.POSITIVE_INFINITY;
    for (int sample = first; sample <= last; sample += step) {
      double cost = add(shape, setting, sample, step);
      if (cost < bestCost) {
        bestCost = cost;
        best = sample;
      }
    }
    if (step > 1) {
      refine(shape, setting, best, step);
    }
  }

  private void refine(EdgeShape shape, Setting setting, int best, int step) {
    int from = Math.max(first, best - step);
    int to = Math.min(last, best + step);
    int fine = Math.max(1, (to - from) / COARSE_CANDIDATES);
    candidates.removeIf(
        c -> c.shape == shape && c.sample > from && c.sample < to && c.width == step);
    for (int sample = from; sample <= to; sample += fine) {
      add(shape, setting, sample, fine);
    }
  }

  private double add(EdgeShape shape, Setting setting, int sample, int width) {
    double cost =
        bareCost[sample] + shape.extraCost(window, sample, setting.seconds, setting.hertz);
    candidates.add(new Candidate(sample, width, shape, cost));
    return cost;
  }

  private Edge weigh() {
    double perParameter = Math.log(window.length());
    Candidate best = candidates.get(0);
    double bestScore = Double.POSITIVE_INFINITY;
    for (Candidate candidate : candidates) {
      double score = candidate.cost + candidate.shape.parameters() * perParameter;
      if (score < bestScore) {
        bestScore = score;
        best = candidate;
      }
    }
    double temper = tempering(best);
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (Candidate candidate : candidates) {
      double score =
          (candidate.cost - best.cost) * temper
              + (candidate.shape.parameters() - best.shape.parameters()) * perParameter;
      if (score < NEGLIGIBLE) {
        double weight = candidate.width * Math.exp(-score / 2);
        double offset = candidate.sample - best.sample;
        sum += weight;
        mean += weight * offset;
        square += weight * offset * offset;
      }
    }
    mean /= sum;
    double variance = Math.max(0, square / sum - mean * mean);
    double interval = window.time().intervalSeconds();
    return new Edge(
        window.time().secondsAt(best.sample + mean - 0.5),
        interval / Math.sqrt(12),
        Math.sqrt(variance) * interval,
        best.shape);
  }

  /**
   * Costs count for less where samples repeat their neighbours, and where even the best explanation
   * leaves more than the spread that was expected (Birge's ratio).
   */
  private double tempering(Candidate best) {
    double expected = window.length();
    for (int i = 0; i < window.length(); i++) {
      double[] spread = i < best.sample ? window.earlierSpreadVolts() : window.laterSpreadVolts();
      expected += 2 * Math.log(spread[i]);
    }
    double surplus = Math.max(0, best.cost - expected) / window.length();
    return window.informationShare() / (1 + surplus);
  }
}

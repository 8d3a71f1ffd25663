package mainsgap.transfer;

import java.util.List;

/**
 * The mean of candidate instants, weighted by how well they explain the samples of a window
 * (Bayesian information criterion), and their spread.
 */
final class EdgeMean {
  /** Explanations worse than the best by more than this (-2 ln p) carry no weight. */
  static final double NEGLIGIBLE = 40;

  /** Deviations that repeat their neighbours tell this little at least. */
  private static final double MOST_CORRELATION = 0.98;

  /** What strays less than white noise does is taken for none. */
  private static final double SIGNIFICANT = 1;

  private final EdgeWindow window;

  /** The last sample that may be the first of the later model. */
  private final int last;

  EdgeMean(EdgeWindow window, int last) {
    this.window = window;
    this.last = last;
  }

  Edge of(List<EdgeCandidate> candidates) {
    double perParameter = Math.log(window.length());
    EdgeCandidate best = candidates.get(0);
    double bestScore = Double.POSITIVE_INFINITY;
    for (EdgeCandidate candidate : candidates) {
      double score = candidate.cost() + candidate.shape().parameters() * perParameter;
      if (score < bestScore) {
        bestScore = score;
        best = candidate;
      }
    }
    double temper = tempering(best);
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (EdgeCandidate candidate : candidates) {
      double score =
          (candidate.cost() - best.cost()) * temper
              + (candidate.shape().parameters() - best.shape().parameters()) * perParameter;
      if (score < NEGLIGIBLE) {
        double weight = candidate.width() * Math.exp(-score / 2);
        double offset = candidate.sample() - best.sample();
        sum += weight;
        mean += weight * offset;
        square += weight * offset * offset;
      }
    }
    mean /= sum;
    double variance = Math.max(0, square / sum - mean * mean);
    double interval = window.time().intervalSeconds();
    double[] laterVolts = best.shape().laterVolts(window, best.sample(), best.setting());
    return new Edge(
        window.time().secondsAt(best.sample() + mean - 0.5),
        best.shape().ambiguity() * interval / Math.sqrt(12),
        best.shape().ambiguity() * Math.sqrt(variance) * interval,
        alikeSeconds(best.sample(), laterVolts) / Math.sqrt(3),
        best.shape(),
        window.time(),
        laterVolts);
  }

  /** How long after the instant the models differ by less than what each may be wrong by. */
  private double alikeSeconds(int sample, double[] laterVolts) {
    int i = sample;
    while (i <= last
        && Math.abs(laterVolts[i] - window.earlierVolts()[i]) < window.modelErrorVolts()) {
      i++;
    }
    return Math.max(0, i - sample - 1) * window.time().intervalSeconds();
  }

  /**
   * Costs count for less where deviations from the best explanation are larger than the spread that
   * was expected (Birge's ratio), and where they repeat their neighbours: such deviations are not
   * noise but a model that does not quite fit.
   */
  private double tempering(EdgeCandidate best) {
    double[] later = best.shape().laterVolts(window, best.sample(), best.setting());
    double squares = 0;
    double products = 0;
    double previous = 0;
    for (int i = 0; i < window.length(); i++) {
      boolean isLater = i >= best.sample();
      double model = isLater ? later[i] : window.earlierVolts()[i];
      double spread = isLater ? window.laterSpreadVolts()[i] : window.earlierSpreadVolts()[i];
      double deviation = (window.volts()[i] - model) / spread;
      squares += deviation * deviation;
      products += deviation * previous;
      previous = deviation;
    }
    double strays = SIGNIFICANT / Math.sqrt(window.length());
    double correlation = squares > 0 ? products / squares : 0;
    double told = correlation < strays ? 0 : Math.min(MOST_CORRELATION, correlation);
    double share = Math.min(window.informationShare(), (1 - told) / (1 + told));
    double ratio = squares / window.length();
    return share / (ratio < 1 + Math.sqrt(2) * strays ? 1 : ratio);
  }
}

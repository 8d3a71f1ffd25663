package mainsgap.transfer.edge;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The mean of candidate instants, weighted by how well they explain the samples of a window
 * (Bayesian information criterion), and their spread.
 */
final class EdgeMean {
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
    Moments all = new Moments(0);
    Map<EdgeShape, Moments> each = new EnumMap<>(EdgeShape.class);
    for (EdgeCandidate candidate : candidates) {
      double score =
          (candidate.cost() - best.cost()) * temper
              + (candidate.shape().parameters() - best.shape().parameters()) * perParameter;
      if (score < Moments.NEGLIGIBLE) {
        double weight = candidate.width() * Math.exp(-score / 2);
        double offset = candidate.sample() - best.sample();
        all.add(offset, weight);
        each.computeIfAbsent(candidate.shape(), shape -> new Moments(0)).add(offset, weight);
      }
    }
    double within = each.values().stream().mapToDouble(Moments::squaresAboutMean).sum();
    double choice = Math.max(0, all.squaresAboutMean() - within);
    Map<EdgeShape, Double> shapes = new EnumMap<>(EdgeShape.class);
    each.forEach((shape, moments) -> shapes.put(shape, moments.weight() / all.weight()));
    double interval = window.time().intervalSeconds();
    double ambiguity = best.shape().ambiguity();
    double[] laterVolts = best.shape().laterVolts(window, best.sample(), best.setting());
    return new Edge(
        window.time().secondsAt(best.sample() + all.mean() - 0.5),
        ambiguity * interval / Math.sqrt(12),
        ambiguity * Math.sqrt(within / all.weight()) * interval,
        ambiguity * Math.sqrt(choice / all.weight()) * interval,
        alikeSeconds(best.sample(), laterVolts) / Math.sqrt(3),
        best.shape(),
        shapes,
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

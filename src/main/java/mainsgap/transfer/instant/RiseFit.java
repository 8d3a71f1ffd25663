package mainsgap.transfer.instant;

import java.util.function.DoubleUnaryOperator;
import mainsgap.transfer.edge.Rise;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;

/**
 * Least squares of a supply that rises from a residue, for any instant and rise: up to the instant
 * {@code r(t) + c}, from there on {@code o + g(t) (a A(t) + b Q(t))}: r the residue, o the offset
 * of the settled supply, A its voltage and Q the same a quarter of a cycle later, g the rise from 0
 * to 1. a, b and c are fitted. Samples are averaged in blocks, the rise exactly so.
 */
final class RiseFit {
  /** Fitted: the instant, the rise, a, b and c. */
  private static final int UNKNOWNS = 5;

  private final double startSeconds;
  private final double blockSeconds;
  private final int averaged;
  private final double offsetVolts;
  private final double[] volts;

  /** Volts above the residue: their sums and those of their squares up to each block. */
  private final double[] sums;

  private final double[] squareSums;
  private final double[] aboveResidue;
  private final double[] supply;
  private final double[] quadrature;

  /** Of the risen supply, from each block to the last one. */
  private final RisenSums risenSums;

  /** How far the supply has risen in each block: of the rise that is looked at. */
  private final double[] risen;

  /**
   * Lays a stretch in blocks.
   *
   * @param stretch in which a supply rises
   * @param averaged samples a block
   */
  RiseFit(RisingStretch stretch, int averaged) {
    int n = (stretch.to() - stretch.from()) / averaged;
    int from = stretch.from();
    Recording recording = stretch.recording();
    Residue residue = stretch.residue();
    Supply after = stretch.after();
    this.averaged = averaged;
    this.risen = new double[n];
    this.blockSeconds = averaged * recording.time().intervalSeconds();
    this.startSeconds = recording.time().secondsAt(from - 0.5);
    this.volts = new double[n];
    this.aboveResidue = new double[n];
    this.supply = new double[n];
    this.quadrature = new double[n];
    this.sums = new double[n + 1];
    this.squareSums = new double[n + 1];
    this.offsetVolts = after.harmonics().offsetVolts();
    double quarter = 0.25 / after.model().frequencyHertz();
    for (int k = 0; k < n; k++) {
      double sum = 0;
      for (int i = from + k * averaged; i < from + (k + 1) * averaged; i++) {
        sum += recording.volts()[i];
      }
      double mean = sum / averaged;
      double seconds = startSeconds + (k + 0.5) * blockSeconds;
      double left = mean - residue.voltsAt(seconds);
      volts[k] = mean - offsetVolts;
      aboveResidue[k] = left;
      supply[k] = after.model().voltsAt(seconds) - offsetVolts;
      quadrature[k] = after.model().voltsAt(seconds + quarter) - offsetVolts;
      sums[k + 1] = sums[k] + left;
      squareSums[k + 1] = squareSums[k] + left * left;
    }
    this.risenSums = RisenSums.of(volts, supply, quadrature);
  }

  /** The samples of a block. */
  int averaged() {
    return averaged;
  }

  double intervalSeconds() {
    return blockSeconds;
  }

  /** Blocks less unknowns. */
  int freedom() {
    return volts.length - UNKNOWNS;
  }

  /** The sum of squared deviations from any voltage of the time. */
  double squares(DoubleUnaryOperator voltsAt) {
    double squares = 0;
    for (int k = 0; k < volts.length; k++) {
      double at = startSeconds + (k + 0.5) * blockSeconds;
      double deviation = volts[k] + offsetVolts - voltsAt.applyAsDouble(at);
      squares += deviation * deviation;
    }
    return squares;
  }

  /**
   * The sum of squared deviations for a return at an instant with a rise of {@code riseSeconds}.
   */
  double squares(Rise rise, double seconds, double riseSeconds) {
    int straddling = (int) Math.floor((seconds - startSeconds) / blockSeconds);
    int before = Math.max(0, Math.min(volts.length, straddling));
    double level = before > 0 ? sums[before] / before : 0;
    double squares = squareSums[before] - level * sums[before];
    double since = startSeconds + (before + 1) * blockSeconds - seconds;
    int risenFrom = rise.fill(risen, before, since, blockSeconds, riseSeconds);
    double vv = risenSums.vv()[before];
    double va = risenSums.va()[risenFrom];
    double vb = risenSums.vb()[risenFrom];
    double aa = risenSums.aa()[risenFrom];
    double ab = risenSums.ab()[risenFrom];
    double bb = risenSums.bb()[risenFrom];
    for (int k = before; k < risenFrom; k++) {
      double a = risen[k] * supply[k];
      double b = risen[k] * quadrature[k];
      va += volts[k] * a;
      vb += volts[k] * b;
      aa += a * a;
      ab += a * b;
      bb += b * b;
    }
    if (straddling == before && before < volts.length) {
      double residual = volts[before] - aboveResidue[before] + level;
      double less = Math.max(0, 1 - since / blockSeconds) * residual;
      vv += less * (less - 2 * volts[before]);
      va -= less * risen[before] * supply[before];
      vb -= less * risen[before] * quadrature[before];
    }
    double determinant = aa * bb - ab * ab;
    double explained =
        determinant > 1e-9 * aa * bb
            ? (va * va * bb - 2 * va * vb * ab + vb * vb * aa) / determinant
            : 0;
    return squares + vv - explained;
  }
}

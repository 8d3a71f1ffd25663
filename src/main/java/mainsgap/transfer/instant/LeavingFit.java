package mainsgap.transfer.instant;

import java.util.Arrays;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.edge.Moments;
import mainsgap.transfer.supply.MotorFit;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;

/**
 * Locates a loss after which the voltage goes on without a step: a capacitor that discharges from
 * where it was, {@code o + (A(x) - o) e^(-(t-x)/T)} from the instant x on, or a motor that runs on,
 * by {@link MotorFit}. Up to x it is the supply before, A.
 */
final class LeavingFit {
  private static final double SHORTEST_DECAY_SECONDS = 20e-6;
  private static final double LONGEST_DECAY_SECONDS = 40e-3;
  private static final double DECAY_RATIO = 1.08;

  /** So many closer decays are tried on each side of the best one. */
  private static final int FINER = 12;

  /** A loss is looked for at so many places between two samples. */
  private static final int PLACES = 4;

  /** What a motor's voltage is tells the loss the better, the longer it is followed. */
  private static final double TOLD_CYCLES = 0.5;

  /** Models are not better than this share of nominal peak, however quiet the record. */
  private static final double SPREAD_FLOOR_SHARE_OF_PEAK = 0.001;

  /** Such a fit replaces a simpler one that it beats by more than this (-2 ln p). */
  private static final double PROVED = 20;

  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;
  private static final double EXPLAINED_NOISES = 1.5;

  /** Real residues are only nearly such; calibrated on generated captures. */
  private static final double AMBIGUITY = 1.2;

  private final Recording recording;
  private final Supply before;
  private final Residue residue;
  private final MotorFit motorFit;
  private final int from;
  private final int to;
  private final int first;
  private final int last;

  /** Squared deviations from the supply before, of all samples up to each. */
  private final double[] squaresBefore;

  /** The supply before at each place, above its offset. */
  private final double[] startVolts;

  /**
   * Takes the samples of a search.
   *
   * @param search where the loss is looked for, in the supply before and what is left
   */
  LeavingFit(Recording recording, Supply before, Residue residue, Instants.Search search) {
    this.recording = recording;
    this.before = before;
    this.residue = residue;
    this.motorFit = new MotorFit(recording, residue, before.model().frequencyHertz());
    this.from = search.from();
    this.first = search.first();
    this.last = search.last();
    int told = last + (int) (TOLD_CYCLES * recording.samplesPerCycle());
    this.to =
        residue.isMotor()
            ? Math.max(search.to(), Math.min(residue.explainedTo(), told))
            : search.to();
    this.squaresBefore = new double[to - from + 1];
    double[] deviations = before.deviationsIn(recording, from, to);
    for (int i = from; i < to; i++) {
      double deviation = deviations[i - from];
      squaresBefore[i - from + 1] = squaresBefore[i - from] + deviation * deviation;
    }
    double offset = before.harmonics().offsetVolts();
    this.startVolts = new double[PLACES * (last - first + 1)];
    for (int k = 0; k < startVolts.length; k++) {
      double index = first + k / PLACES - toSample(k % PLACES);
      startVolts[k] = before.model().voltsAt(recording.time().secondsAt(index)) - offset;
    }
  }

  /** The loss; {@code found} where that explains the samples as well. */
  Edge better(Edge found) {
    double[] discharge = discharge();
    double[] motor = motor();
    double floor = SPREAD_FLOOR_SHARE_OF_PEAK * recording.peakVolts();
    double noise = Math.max(floor, before.usualSpreadVolts());
    double least = Math.min(lowest(discharge), lowest(motor));
    double variance = Math.max(noise * noise, least / (to - from));
    double share = before.informationShare() / variance;
    double price = Math.log(to - from);
    double[] scores = new double[discharge.length];
    for (int k = 0; k < scores.length; k++) {
      double discharged = discharge[k] * share + price;
      double moved = motor[k] * share + (motorFit.columns() - 1) * price;
      scores[k] = -2 * logOfSum(-discharged / 2, -moved / 2);
    }
    boolean isBetter = squaresOf(found) * share > lowest(scores) + proved(price);
    return isBetter && isExplained(discharge, motor) ? edge(scores, found) : found;
  }

  /** Where the residue is one of these anyway, it counts with its own unknowns beside this fit. */
  private double proved(double price) {
    if (!residue.isVisible(recording)) {
      return PROVED;
    }
    return -(residue.isMotor() ? motorFit.columns() : 2) * price;
  }

  /** What comes after the loss lies at the fit: a spike, say, does not. */
  private boolean isExplained(double[] discharge, double[] motor) {
    int best = 0;
    for (int k = 1; k < discharge.length; k++) {
      double squares = Math.min(discharge[k], motor[k]);
      best = squares < Math.min(discharge[best], motor[best]) ? k : best;
    }
    int index = first + best / PLACES;
    double squares = Math.min(discharge[best], motor[best]) - squaresBefore[index - from];
    double rms = Math.sqrt(Math.max(0, squares) / (to - index));
    double noise = EXPLAINED_NOISES * before.usualSpreadVolts();
    return rms < Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), noise);
  }

  private static double logOfSum(double one, double other) {
    double more = Math.max(one, other);
    return more + Math.log(Math.exp(one - more) + Math.exp(other - more));
  }

  private static double lowest(double[] squares) {
    double lowest = Double.MAX_VALUE;
    for (double one : squares) {
      lowest = Math.min(lowest, one);
    }
    return lowest;
  }

  private double squaresOf(Edge found) {
    int left = (int) Math.ceil(recording.time().indexAt(found.seconds()));
    double squares = squaresBefore[Math.max(0, Math.min(to, left) - from)];
    for (int i = Math.max(from, left); i < to; i++) {
      double seconds = recording.time().secondsAt(i);
      double model = found.covers(seconds) ? found.laterVoltsAt(seconds) : residue.voltsAt(seconds);
      double deviation = recording.volts()[i] - model;
      squares += deviation * deviation;
    }
    return squares;
  }

  /**
   * For a loss at each place, a part of a sample apart, the squares of the best discharge from
   * there: first of decays far apart, then of closer ones about the best.
   */
  private double[] discharge() {
    double[] lowest = new double[PLACES * (last - first + 1)];
    Arrays.fill(lowest, Double.MAX_VALUE);
    double best = SHORTEST_DECAY_SECONDS;
    double least = Double.MAX_VALUE;
    for (double decay = SHORTEST_DECAY_SECONDS;
        decay < LONGEST_DECAY_SECONDS;
        decay *= DECAY_RATIO) {
      double squares = discharge(decay, lowest);
      if (squares < least) {
        least = squares;
        best = decay;
      }
    }
    for (int k = -FINER; k <= FINER; k++) {
      discharge(best * Math.pow(DECAY_RATIO, 1.5 * k / FINER), lowest);
    }
    return lowest;
  }

  /** Takes the squares for a decay into the lowest ones; gives the least of all places. */
  private double discharge(double decay, double[] lowest) {
    double offset = before.harmonics().offsetVolts();
    double dt = recording.time().intervalSeconds();
    double keep = Math.exp(-dt / decay);
    double[] keptToSample = new double[PLACES];
    for (int p = 0; p < PLACES; p++) {
      keptToSample[p] = Math.exp(-toSample(p) * dt / decay);
    }
    double squares = 0;
    double products = 0;
    double shapes = 0;
    double least = Double.MAX_VALUE;
    for (int i = to - 1; i >= first; i--) {
      double volts = recording.volts()[i] - offset;
      squares += volts * volts;
      products = volts + keep * products;
      shapes = 1 + keep * keep * shapes;
      for (int p = 0; i <= last && p < PLACES; p++) {
        int place = (i - first) * PLACES + p;
        double start = startVolts[place] * keptToSample[p];
        double left = squares - 2 * start * products + start * start * shapes;
        double all = squaresBefore[i - from] + left;
        lowest[place] = Math.min(lowest[place], all);
        least = Math.min(least, all);
      }
    }
    return least;
  }

  /** From a place to the sample after it, in samples. */
  private static double toSample(int place) {
    return 1 - (place + 0.5) / PLACES;
  }

  /** The same for a motor's voltage, whose places within a sample are one. */
  private double[] motor() {
    double[] left = motorFit.squares(first, last, to);
    double[] lowest = new double[PLACES * left.length];
    for (int k = 0; k < left.length; k++) {
      double all = squaresBefore[first + k - from] + left[k];
      Arrays.fill(lowest, k * PLACES, (k + 1) * PLACES, all);
    }
    return lowest;
  }

  /** The spread over places within a sample holds what the sample interval leaves open. */
  private Edge edge(double[] scores, Edge found) {
    Moments places = Moments.byCosts(scores);
    double interval = recording.time().intervalSeconds();
    double spread = places.spread() * interval / PLACES;
    double sampling = interval / Math.sqrt(12);
    double located = AMBIGUITY * spread;
    return new Edge(
        recording.time().secondsAt(first - 1 + (places.mean() + 0.5) / PLACES),
        sampling,
        Math.sqrt(Math.max(0, located * located - sampling * sampling)),
        0,
        EdgeShape.APPROACH,
        found.window(),
        found.laterVolts());
  }
}

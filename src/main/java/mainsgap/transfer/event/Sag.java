package mainsgap.transfer.event;

import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Tells a load that a sagging supply goes on feeding: over half a cycle and more its voltage is
 * that supply's, only lower. A motor that runs on slips and decays within that time.
 */
public final class Sag {
  /**
   * Samples over which the supply sags.
   *
   * @param from the first of them
   * @param to one after the last
   * @param share what is left of the supply
   */
  record Stretch(int from, int to, double share) {}

  /** In a shorter stretch a motor's voltage is no other than a lower supply's. */
  private static final double SHORTEST_CYCLES = 0.5;

  /** Below this share of the supply it is an interruption (IEC 61000-4-30, from memory). */
  private static final double LEAST_SHARE = 0.1;

  /** A lower one feeds nothing, unless its supply goes on after it. */
  private static final double FEEDS_SHARE = 0.4;

  /** Above this share it is no dip (IEC 61000-4-30, from memory). */
  private static final double MOST_SHARE = 0.9;

  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;
  private static final double EXPLAINED_NOISES = 1.5;

  /** Near a crossing a sag begins so long before it shows. */
  private static final double UNSEEN_SECONDS = 1.5e-3;

  private final Recording recording;
  private final Supply supply;

  public Sag(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
  }

  /** Whether a lower supply feeds from a sample up to another one, or for a cycle. */
  public boolean begins(int from, int to) {
    int cycle = from + (int) recording.samplesPerCycle();
    int end = Math.min(cycle, recording.length());
    return (explains(from, to) && isFed(from, to, to))
        || (explains(from, end) && isFed(from, end, to));
  }

  /** Whether it feeds, or its supply goes on behind it. */
  private boolean isFed(int from, int to, int end) {
    return share(from, to) >= FEEDS_SHARE || goesOn(end);
  }

  /** Whether the supply is whole again from a sample on, or a little later. */
  private boolean goesOn(int end) {
    int from = end + recording.samplesIn(UNSEEN_SECONDS);
    int half = (int) Math.ceil(SHORTEST_CYCLES * recording.samplesPerCycle());
    return from + half <= recording.length() && isExplained(from, from + half, 1);
  }

  /** The sag that begins at a departure and comes to an end; null where there is none. */
  @Nullable Stretch at(int departure) {
    int half = (int) Math.ceil(SHORTEST_CYCLES * recording.samplesPerCycle());
    int settled = departure + Departure.averagingSamples(recording);
    if (settled + half > recording.length() || !explains(settled, settled + half)) {
      return null;
    }
    double share = share(settled, settled + half);
    int width = Departure.averagingSamples(recording);
    double band = Disturbance.bandVolts(recording, supply, width);
    int to = settled;
    while (to + width <= recording.length() && Math.abs(offShare(to, width, share)) < band) {
      to += width;
    }
    double sampleBand = Disturbance.bandVolts(recording, supply, 1);
    while (to < recording.length() && Math.abs(offShare(to, 1, share)) < sampleBand) {
      to++;
    }
    int from = Math.max(0, departure - recording.samplesIn(UNSEEN_SECONDS));
    boolean isOver = to + width <= recording.length();
    return isOver && (share >= FEEDS_SHARE || goesOn(to)) ? new Stretch(from, to, share) : null;
  }

  private double offShare(int from, int width, double share) {
    double offset = supply.harmonics().offsetVolts();
    double[] supplied = supply.voltsIn(recording.time(), from, from + width);
    double sum = 0;
    for (int i = from; i < from + width; i++) {
      sum += recording.volts()[i] - offset - share * (supplied[i - from] - offset);
    }
    return sum / width;
  }

  /** What is left of the supply, by least squares. */
  private double share(int from, int to) {
    double products = 0;
    double shapes = 0;
    double offset = supply.harmonics().offsetVolts();
    double[] supplied = supply.voltsIn(recording.time(), from, to);
    for (int i = from; i < to; i++) {
      double shape = supplied[i - from] - offset;
      products += (recording.volts()[i] - offset) * shape;
      shapes += shape * shape;
    }
    return products / shapes;
  }

  private boolean explains(int from, int to) {
    if (to - from < SHORTEST_CYCLES * recording.samplesPerCycle()) {
      return false;
    }
    double share = share(from, to);
    return share > LEAST_SHARE && share < MOST_SHARE && isExplained(from, to, share);
  }

  private boolean isExplained(int from, int to, double share) {
    double offset = supply.harmonics().offsetVolts();
    double[] supplied = supply.voltsIn(recording.time(), from, to);
    double squares = 0;
    for (int i = from; i < to; i++) {
      double off = recording.volts()[i] - offset - share * (supplied[i - from] - offset);
      squares += off * off;
    }
    double rms = Math.sqrt(squares / (to - from));
    double noise = EXPLAINED_NOISES * supply.usualSpreadVolts();
    return rms < Math.max(EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(), noise);
  }
}

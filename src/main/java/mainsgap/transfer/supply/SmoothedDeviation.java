package mainsgap.transfer.supply;

/**
 * The deviation of the voltage from a supply, averaged about a sample, for one walk backwards: each
 * average follows from the one before it by what comes in and what goes out.
 */
public final class SmoothedDeviation {
  /** Deviations are worked out for at least so many samples at once. */
  private static final int FEWEST_AHEAD = 1_000;

  private final Recording recording;
  private final Supply supply;
  private final int width;

  /** The samples in the sum. */
  private int from;

  private int to;
  private double sum;

  private int heldFrom;
  private double[] held = new double[0];

  /** Walks from {@code start}, the first sample that can be asked for, towards sample 0. */
  public SmoothedDeviation(Recording recording, Supply supply, int start) {
    this.recording = recording;
    this.supply = supply;
    this.width = Departure.averagingSamples(recording);
    this.from = lastOf(start);
    this.to = from;
    this.heldFrom = from;
  }

  private int firstOf(int index) {
    return Math.max(0, index - width / 2);
  }

  /** One after the last sample of the average about a sample. */
  private int lastOf(int index) {
    return Math.min(recording.length(), firstOf(index) + width);
  }

  /** About {@code index}, which is at most the one asked for before. */
  public double at(int index) {
    hold(firstOf(index));
    while (from > firstOf(index)) {
      from--;
      sum += held[from - heldFrom];
    }
    while (to > lastOf(index)) {
      to--;
      sum -= held[to - heldFrom];
    }
    return sum / (to - from);
  }

  private void hold(int first) {
    if (first < heldFrom) {
      heldFrom = Math.max(0, first - Math.max(FEWEST_AHEAD, 4 * width));
      held = supply.deviationsIn(recording, heldFrom, to);
    }
  }
}

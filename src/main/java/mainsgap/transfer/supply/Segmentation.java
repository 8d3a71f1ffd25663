package mainsgap.transfer.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tells which of the fitted models each sample follows, by the cheapest path through them: the
 * supply before, the residue, the supply after, and breaks after a make. A change of model costs a
 * fixed price, so that places where models cross are no changes.
 */
public final class Segmentation {
  /** What feeds the load. */
  public enum Part {
    BEFORE,
    GAP,
    AFTER,
    BREAK
  }

  /**
   * A run of samples.
   *
   * @param part what feeds the load
   * @param from the first sample
   * @param to one after the last sample
   */
  public record Run(Part part, int from, int to) {
    public int length() {
      return to - from;
    }

    public boolean overlaps(Run other) {
      return from < other.to && other.from < to;
    }
  }

  /** The squared deviations of samples, in units of their spread, from each model. */
  public interface Costs {
    /** Fills in those of {@code count} samples from {@code first} on, a few at a time. */
    void fill(int first, int count, double[] before, double[] gap, double[] after);
  }

  /** The price of a change of model: odds of about one in a hundred million, -2 ln p. */
  private static final double CHANGE_PRICE = 36;

  /** A sample that fits neither supply counts as gap: its cost there is held below theirs. */
  private static final double MOST_SUPPLY_COST = 60;

  private static final double MOST_GAP_COST = 18;

  /** The parts by the number that they have in the tables below. */
  private static final Part[] NUMBERED = {Part.BEFORE, Part.GAP, Part.AFTER, Part.BREAK};

  private static final int BEFORE = 0;
  private static final int GAP = 1;
  private static final int AFTER = 2;
  private static final int BREAK = 3;
  private static final int PARTS = NUMBERED.length;

  /** Which parts may come before another one, beside itself. */
  private static final int[][] FOLLOWS = {
    {GAP}, // the mains contact bounces
    {BEFORE}, // opens
    {BEFORE, GAP, BREAK}, // takes over without a gap, returns, is made again
    {AFTER} // breaks
  };

  /** Where a path came from takes two bits a part: all parts fit into a byte. */
  private static final int BITS = 2;

  private static final int MASK = (1 << BITS) - 1;

  /** Costs are asked for so many samples at a time. */
  private static final int BLOCK = 256;

  private Segmentation() {}

  /**
   * The runs of the cheapest path through samples {@code from} (inclusive) to {@code to}
   * (exclusive); it starts in the supply before.
   */
  public static List<Run> cheapest(int from, int to, Costs costs, boolean endsInAfter) {
    return cheapest(from, to, costs, BEFORE, endsInAfter);
  }

  /** The index of the first run of {@code part}; negative where there is none. */
  public static int first(List<Run> runs, Part part) {
    for (int k = 0; k < runs.size(); k++) {
      if (runs.get(k).part() == part) {
        return k;
      }
    }
    return -1;
  }

  /** The runs of the cheapest path of a supply after that has come already. */
  public static List<Run> cheapestAfterReturn(int from, double[] gap, double[] after) {
    Costs costs =
        (first, count, beforeCosts, gapCosts, afterCosts) -> {
          Arrays.fill(beforeCosts, Double.POSITIVE_INFINITY);
          System.arraycopy(gap, first - from, gapCosts, 0, count);
          System.arraycopy(after, first - from, afterCosts, 0, count);
        };
    return cheapest(from, from + gap.length, costs, AFTER, true);
  }

  private static List<Run> cheapest(
      int from, int to, Costs costs, int firstPart, boolean endsInAfter) {
    byte[] cameFrom = new byte[to - from];
    double[] total = new double[PARTS];
    Arrays.fill(total, Double.POSITIVE_INFINITY);
    total[firstPart] = 0;
    double[] before = new double[BLOCK];
    double[] gap = new double[BLOCK];
    double[] after = new double[BLOCK];
    double[] next = new double[PARTS];
    for (int first = from; first < to; first += BLOCK) {
      int count = Math.min(BLOCK, to - first);
      costs.fill(first, count, before, gap, after);
      for (int k = 0; k < count; k++) {
        cameFrom[first - from + k] = step(total, next);
        double dead = Math.min(MOST_GAP_COST, gap[k]);
        total[BEFORE] = next[BEFORE] + Math.min(MOST_SUPPLY_COST, before[k]);
        total[GAP] = next[GAP] + dead;
        total[AFTER] = next[AFTER] + Math.min(MOST_SUPPLY_COST, after[k]);
        total[BREAK] = next[BREAK] + dead;
      }
    }
    return backwards(from, cameFrom, lastPart(total, endsInAfter));
  }

  /** The price of the cheapest way into each part, and where these come from. */
  private static byte step(double[] total, double[] next) {
    int cameFrom = 0;
    for (int part = 0; part < PARTS; part++) {
      int best = part;
      double price = total[part];
      for (int earlier : FOLLOWS[part]) {
        if (total[earlier] + CHANGE_PRICE < price) {
          price = total[earlier] + CHANGE_PRICE;
          best = earlier;
        }
      }
      cameFrom |= best << (BITS * part);
      next[part] = price;
    }
    return (byte) cameFrom;
  }

  private static int lastPart(double[] total, boolean endsInAfter) {
    if (endsInAfter) {
      return AFTER;
    }
    return total[BEFORE] < total[GAP] ? BEFORE : GAP;
  }

  private static List<Run> backwards(int from, byte[] cameFrom, int lastPart) {
    List<Run> runs = new ArrayList<>();
    int part = lastPart;
    int end = cameFrom.length;
    for (int i = end - 1; i >= 0; i--) {
      int earlier = (cameFrom[i] >> (BITS * part)) & MASK;
      if (earlier != part) {
        runs.add(0, new Run(NUMBERED[part], from + i, from + end));
        end = i;
        part = earlier;
      }
    }
    runs.add(0, new Run(NUMBERED[part], from, from + end));
    return runs;
  }
}

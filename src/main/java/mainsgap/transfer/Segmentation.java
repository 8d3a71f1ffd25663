package mainsgap.transfer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tells which of the fitted models each sample follows, by the cheapest path through them: the
 * supply before, the residue, the supply after, and breaks after a make. A change of model costs a
 * fixed price, so that places where models cross are no changes.
 */
final class Segmentation {
  /** What feeds the load. */
  enum Part {
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
  record Run(Part part, int from, int to) {
    int length() {
      return to - from;
    }

    boolean overlaps(Run other) {
      return from < other.to && other.from < to;
    }
  }

  /** The squared deviations of the samples, in units of their spread, from each model. */
  @SuppressWarnings("ArrayRecordComponent") // made for one call
  record Costs(int from, double[] before, double[] gap, double[] after) {}

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
  private static final int PARTS = NUMBERED.length;

  /** Which part may follow which: FOLLOWS[a][b] for b after a. */
  private static final boolean[][] FOLLOWS = {
    {true, true, true, false}, // before: opens, or is taken over without a gap
    {true, true, true, false}, // gap: the mains contact bounces, or the return
    {false, false, true, true}, // after: breaks
    {false, false, true, true} // break: made again
  };

  private Segmentation() {}

  /** The runs of the cheapest path; it starts in the supply before. */
  static List<Run> cheapest(Costs costs, boolean endsInAfter) {
    return cheapest(costs, BEFORE, endsInAfter);
  }

  /** The runs of the cheapest path of a supply after that has come already. */
  static List<Run> cheapestAfterReturn(int from, double[] gap, double[] after) {
    double[] never = new double[gap.length];
    Arrays.fill(never, Double.POSITIVE_INFINITY);
    return cheapest(new Costs(from, never, gap, after), AFTER, true);
  }

  private static List<Run> cheapest(Costs costs, int firstPart, boolean endsInAfter) {
    int n = costs.before.length;
    byte[] cameFrom = new byte[n * PARTS];
    double[] total = new double[PARTS];
    double[] next = new double[PARTS];
    Arrays.fill(total, Double.POSITIVE_INFINITY);
    total[firstPart] = 0;
    for (int i = 0; i < n; i++) {
      for (int part = 0; part < PARTS; part++) {
        int best = part;
        double price = total[part];
        for (int earlier = 0; earlier < PARTS; earlier++) {
          if (earlier != part && FOLLOWS[earlier][part] && total[earlier] + CHANGE_PRICE < price) {
            price = total[earlier] + CHANGE_PRICE;
            best = earlier;
          }
        }
        cameFrom[i * PARTS + part] = (byte) best;
        next[part] = price + cost(costs, part, i);
      }
      double[] swap = total;
      total = next;
      next = swap;
    }
    return backwards(costs, cameFrom, lastPart(total, endsInAfter));
  }

  private static double cost(Costs costs, int part, int i) {
    return switch (part) {
      case BEFORE -> Math.min(MOST_SUPPLY_COST, costs.before[i]);
      case AFTER -> Math.min(MOST_SUPPLY_COST, costs.after[i]);
      default -> Math.min(MOST_GAP_COST, costs.gap[i]);
    };
  }

  private static int lastPart(double[] total, boolean endsInAfter) {
    if (endsInAfter) {
      return AFTER;
    }
    return total[BEFORE] < total[GAP] ? BEFORE : GAP;
  }

  private static List<Run> backwards(Costs costs, byte[] cameFrom, int lastPart) {
    List<Run> runs = new ArrayList<>();
    int part = lastPart;
    int end = costs.before.length;
    for (int i = end - 1; i >= 0; i--) {
      int earlier = cameFrom[i * PARTS + part];
      if (earlier != part) {
        runs.add(0, new Run(NUMBERED[part], costs.from + i, costs.from + end));
        end = i;
        part = earlier;
      }
    }
    runs.add(0, new Run(NUMBERED[part], costs.from, costs.from + end));
    return runs;
  }
}

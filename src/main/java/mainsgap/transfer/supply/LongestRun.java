package mainsgap.transfer.supply;

import java.util.function.IntPredicate;

/** Neighbouring samples that have something in common. */
public final class LongestRun {
  private LongestRun() {}

  /** The most of them on end from one sample (inclusive) to another (exclusive). */
  public static int of(int from, int to, IntPredicate has) {
    int longest = 0;
    int since = from;
    for (int i = from; i < to; i++) {
      since = has.test(i) ? since : i + 1;
      longest = Math.max(longest, i + 1 - since);
    }
    return longest;
  }
}

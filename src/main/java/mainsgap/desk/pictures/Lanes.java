package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.List;

/**
 * Puts marks that would cover each other above and below each other: 0, +1, -1, +2, -2 ... lanes
 * from the middle. Marks come from left to right.
 */
final class Lanes {
  private final double width;
  private final int most;
  private final List<Double> lefts = new ArrayList<>();
  private boolean full;

  /**
   * Free lanes.
   *
   * @param width that a mark takes
   * @param room above and below the middle
   */
  Lanes(double width, double room) {
    this.width = width;
    this.most = 1 + 2 * (int) Math.max(0, Math.floor(room / width));
  }

  /** How far from the middle the next mark lies; on those that are there where no lane is free. */
  double place(double x) {
    int lane = 0;
    while (lane < lefts.size() && x - lefts.get(lane) < width) {
      lane++;
    }
    if (lane == most) {
      full = true;
      lane = leftmost();
    }
    if (lane < lefts.size()) {
      lefts.set(lane, x);
    } else {
      lefts.add(x);
    }
    int steps = (lane + 1) / 2;
    return (lane % 2 == 1 ? steps : -steps) * width;
  }

  /** Whether a mark had to be put upon another. */
  boolean isFull() {
    return full;
  }

  private int leftmost() {
    int found = 0;
    for (int lane = 1; lane < lefts.size(); lane++) {
      if (lefts.get(lane) < lefts.get(found)) {
        found = lane;
      }
    }
    return found;
  }
}

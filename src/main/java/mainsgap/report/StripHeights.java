package mainsgap.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** At what height of its strip each trial stands, so that none covers another. */
interface StripHeights {

  /** The height of a trial at {@code x}; asked from left to right. */
  double of(TrialPoint point, double x);

  /** The first trial at the top and the last one at the bottom: for strips that are high enough. */
  record InOrder(double top, double bottom, int trials) implements StripHeights {
    @Override
    public double of(TrialPoint point, double x) {
      return ofNumber(point.number());
    }

    double ofNumber(int number) {
      return trials == 1 ? (top + bottom) / 2 : top + (number - 1) * (bottom - top) / (trials - 1);
    }
  }

  /** About the middle; those that would cover each other beside each other. */
  final class Lanes implements StripHeights {
    private final double middle;
    private final double width;
    private final List<Double> ends = new ArrayList<>();
    private final int most;

    Lanes(double middle, double room, double width) {
      this.middle = middle;
      this.width = width;
      this.most = 1 + 2 * (int) Math.max(0, Math.floor(room / width));
    }

    @Override
    public double of(TrialPoint point, double x) {
      for (int lane = 0; lane < most; lane++) {
        @Nullable Double end = lane < ends.size() ? ends.get(lane) : null;
        if (end == null || x - end >= width) {
          if (end == null) {
            ends.add(x);
          } else {
            ends.set(lane, x);
          }
          return at(lane);
        }
      }
      return middle;
    }

    /** 0, +1, -1, +2, -2 ... lanes from the middle. */
    private double at(int lane) {
      int steps = (lane + 1) / 2;
      return middle + (lane % 2 == 1 ? steps : -steps) * width;
    }
  }
}

package mainsgap.transfer.edge;

import java.util.function.DoubleUnaryOperator;

/** The place of the lowest value of a function of one unknown. */
public final class Minimum {
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private Minimum() {}

  /** Golden section between two places, down to {@code width}; of a function with one valley. */
  public static double between(double from, double to, double width, DoubleUnaryOperator f) {
    double low = from;
    double high = to;
    double left = high - GOLDEN * (high - low);
    double right = low + GOLDEN * (high - low);
    double atLeft = f.applyAsDouble(left);
    double atRight = f.applyAsDouble(right);
    while (high - low > width) {
      if (atLeft < atRight) {
        high = right;
        right = left;
        atRight = atLeft;
        left = high - GOLDEN * (high - low);
        atLeft = f.applyAsDouble(left);
      } else {
        low = left;
        left = right;
        atLeft = atRight;
        right = low + GOLDEN * (high - low);
        atRight = f.applyAsDouble(right);
      }
    }
    return (low + high) / 2;
  }
}

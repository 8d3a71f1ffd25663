package mainsgap.desk.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Round numbers along an axis: multiples of 1, 2 or 5 times a power of ten.
 *
 * @param step from one to the next
 * @param values from the lowest to the highest
 */
public record Ticks(double step, List<Double> values) {
  private static final int MOST = 1000;

  /** Those from one number to another, at least {@code leastStep} apart. */
  public static Ticks between(double from, double to, double leastStep) {
    double step = roundStep(Math.max(leastStep, (to - from) / MOST));
    List<Double> values = new ArrayList<>();
    for (double n = Math.ceil(from / step - 1e-9); n <= to / step + 1e-9; n++) {
      values.add(n * step);
    }
    return new Ticks(step, List.copyOf(values));
  }

  /** The tick as people write it, with as many decimals as the step needs. */
  public String words(double value) {
    int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
    String digits = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(value));
    boolean below = value < 0 && digits.chars().anyMatch(c -> c >= '1' && c <= '9');
    return below ? "−" + digits : digits;
  }

  private static double roundStep(double least) {
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double times : new double[] {1, 2, 5}) {
      if (times * power >= least * (1 - 1e-9)) {
        return times * power;
      }
    }
    return 10 * power;
  }
}

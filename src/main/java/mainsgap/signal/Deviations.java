package mainsgap.signal;

/**
 * How samples deviate from a model.
 *
 * @param standardDeviationVolts their root mean square
 * @param neighbourCorrelation the correlation of neighbouring samples' deviations, -1 to 1
 */
public record Deviations(double standardDeviationVolts, double neighbourCorrelation) {

  /**
   * Deviations of every {@code stride}-th sample from {@code from} (inclusive) to {@code to}
   * (exclusive), each with its direct neighbour.
   */
  public static Deviations of(
      double[] volts, TimeAxis time, int from, int to, int stride, PeriodicModel model) {
    double squares = 0;
    double products = 0;
    int count = 0;
    double next = 0;
    for (int i = from; i + 1 < to; i += stride) {
      boolean known = stride == 1 && i > from;
      double here = known ? next : volts[i] - model.voltsAt(time.secondsAt(i));
      next = volts[i + 1] - model.voltsAt(time.secondsAt(i + 1));
      squares += (here * here + next * next) / 2;
      products += here * next;
      count++;
    }
    if (count == 0 || squares == 0) {
      return new Deviations(0, 0);
    }
    return new Deviations(Math.sqrt(squares / count), products / squares);
  }
}

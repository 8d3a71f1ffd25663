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
    int count = (to - from + stride - 2) / stride;
    if (count < 1) {
      return new Deviations(0, 0);
    }
    double interval = stride * time.intervalSeconds();
    double[] here =
        model.voltsEvery(time.secondsAt(from), interval, stride == 1 ? count + 1 : count);
    double[] next =
        stride == 1 ? here : model.voltsEvery(time.secondsAt(from + 1), interval, count);
    int shift = stride == 1 ? 1 : 0;
    double squares = 0;
    double products = 0;
    for (int k = 0; k < count; k++) {
      int i = from + k * stride;
      double deviation = volts[i] - here[k];
      double neighbour = volts[i + 1] - next[k + shift];
      squares += (deviation * deviation + neighbour * neighbour) / 2;
      products += deviation * neighbour;
    }
    if (squares == 0) {
      return new Deviations(0, 0);
    }
    return new Deviations(Math.sqrt(squares / count), products / squares);
  }
}

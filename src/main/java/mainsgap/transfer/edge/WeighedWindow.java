package mainsgap.transfer.edge;

/**
 * An {@link EdgeWindow} as the sums of the shapes need it, in units of the later model's spread,
 * one value a sample, worked out once for all instants and shapes. Arrays are owned.
 *
 * @param weights one over the spread
 * @param deviations of the samples from the later model
 * @param rose of the samples from the earlier model
 * @param steps of the later model from the earlier one
 * @param unrisenSquares what the samples from each on cost more if the supply never rises
 */
@SuppressWarnings("ArrayRecordComponent") // owned, made for one call
record WeighedWindow(
    EdgeWindow window,
    double[] weights,
    double[] deviations,
    double[] rose,
    double[] steps,
    double[] unrisenSquares) {

  static WeighedWindow of(EdgeWindow window) {
    int n = window.length();
    WeighedWindow weighed =
        new WeighedWindow(
            window, new double[n], new double[n], new double[n], new double[n], new double[n + 1]);
    for (int i = n - 1; i >= 0; i--) {
      double weight = 1 / window.laterSpreadVolts()[i];
      double deviation = window.laterDeviation(i);
      double rose = (window.volts()[i] - window.earlierVolts()[i]) * weight;
      weighed.weights[i] = weight;
      weighed.deviations[i] = deviation;
      weighed.rose[i] = rose;
      weighed.steps[i] = weighed.stepVolts(i) * weight;
      weighed.unrisenSquares[i] =
          weighed.unrisenSquares[i + 1] + rose * rose - deviation * deviation;
    }
    return weighed;
  }

  int length() {
    return weights.length;
  }

  double intervalSeconds() {
    return window.time().intervalSeconds();
  }

  /** By how much the later model lies above the earlier one. */
  double stepVolts(int i) {
    return window.laterVolts()[i] - window.earlierVolts()[i];
  }
}

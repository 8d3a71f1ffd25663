package mainsgap.transfer.edge;

/**
 * Sums over a window's samples from a change on, in units of the spread: of the shape of a rise to
 * the later model, and of its product with what rose above the earlier one. The risen amplitude is
 * free: a supply that still rises is fitted low.
 *
 * @param unrisenSquares what the samples cost more than under the later model if nothing rises
 */
record RiseSums(double products, double shapes, double unrisenSquares) {

  static RiseSums of(Rise rise, WeighedWindow window, int sample, EdgeShape.Setting setting) {
    double dt = window.intervalSeconds();
    double decay = Math.exp(-dt / setting.seconds());
    double left = Math.exp(-0.5 * dt / setting.seconds());
    double[] steps = window.steps();
    double[] rose = window.rose();
    double products = 0;
    double shapes = 0;
    for (int i = sample; i < steps.length; i++) {
      double since = (i - sample + 0.5) * dt;
      double risen = rise == Rise.EXPONENTIAL ? 1 - left : rise.at(since, setting.seconds());
      left *= decay;
      double shape = steps[i] * risen;
      products += rose[i] * shape;
      shapes += shape * shape;
    }
    return new RiseSums(products, shapes, window.unrisenSquares()[sample]);
  }

  /** What a rise costs more, mostly less, than the later model at once. */
  double extraCost() {
    return extraCost(products, shapes, unrisenSquares);
  }

  /** The same without a record for it. */
  static double extraCost(double products, double shapes, double unrisenSquares) {
    return shapes > 0 ? unrisenSquares - products * products / shapes : 0;
  }

  /** The risen amplitude as a share of the later model's. */
  double gain() {
    return shapes > 0 ? products / shapes : 1;
  }
}

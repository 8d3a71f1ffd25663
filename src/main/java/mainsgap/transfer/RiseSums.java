package mainsgap.transfer;

/**
 * Sums over a window's samples from a change on, in units of the spread: of what rose above the
 * earlier model, of the shape of a rise to the later one, and of their product. The risen amplitude
 * is free: a supply that still rises is fitted low.
 *
 * @param bareSquares of the deviations from the later model
 */
record RiseSums(double squares, double products, double shapes, double bareSquares) {

  static RiseSums of(Rise rise, EdgeWindow window, int sample, EdgeShape.Setting setting) {
    double dt = window.time().intervalSeconds();
    double decay = Math.exp(-dt / setting.seconds());
    double left = Math.exp(-0.5 * dt / setting.seconds());
    double bareSquares = 0;
    double squares = 0;
    double products = 0;
    double shapes = 0;
    for (int i = sample; i < window.length(); i++) {
      double since = (i - sample + 0.5) * dt;
      double risen = rise == Rise.EXPONENTIAL ? 1 - left : rise.at(since, setting.seconds());
      left *= decay;
      double weight = 1 / window.laterSpreadVolts()[i];
      double earlier = window.earlierVolts()[i];
      double shape = (window.laterVolts()[i] - earlier) * risen * weight;
      double rose = (window.volts()[i] - earlier) * weight;
      double bare = window.laterDeviation(i);
      bareSquares += bare * bare;
      squares += rose * rose;
      products += rose * shape;
      shapes += shape * shape;
    }
    return new RiseSums(squares, products, shapes, bareSquares);
  }

  /** What a rise costs more, mostly less, than the later model at once. */
  double extraCost() {
    return shapes > 0 ? squares - products * products / shapes - bareSquares : 0;
  }

  /** The risen amplitude as a share of the later model's. */
  double gain() {
    return shapes > 0 ? products / shapes : 1;
  }
}

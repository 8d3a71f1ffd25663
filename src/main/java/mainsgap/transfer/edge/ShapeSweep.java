package mainsgap.transfer.edge;

/**
 * The extra cost of one shape for a change at every sample of a stretch, in one sweep backwards
 * over the window: the sums of what decays, or grows, with the time since the change follow from
 * those of the next sample, so that an instant takes a few products instead of a sum of its own.
 * They are those of {@link RiseSums}, {@link RingSums} and the approach but for rounding.
 */
final class ShapeSweep {
  private final WeighedWindow window;
  private final int first;

  /** Costs at samples from {@code first} on. */
  private final double[] costs;

  private ShapeSweep(WeighedWindow window, int first, int last) {
    this.window = window;
    this.first = first;
    this.costs = new double[last - first + 1];
  }

  /**
   * The extra costs for a change at samples {@code first} to {@code last}.
   *
   * @param last below the length of the window
   */
  static double[] extraCosts(
      EdgeShape shape, WeighedWindow window, int first, int last, EdgeShape.Setting setting) {
    ShapeSweep sweep = new ShapeSweep(window, first, last);
    switch (shape) {
      case ABRUPT -> {}
      case APPROACH -> sweep.approach(setting.seconds());
      case RING -> sweep.ring(setting);
      case SOFT_START -> sweep.softStart(setting.seconds());
      case RAMP -> sweep.ramp(setting.seconds());
    }
    return sweep.costs;
  }

  private void put(int sample, double cost) {
    if (sample - first < costs.length) {
      costs[sample - first] = cost;
    }
  }

  /** An approach is followed until it is over, so samples leave its sums at the far end. */
  private void approach(double seconds) {
    double[] weights = window.weights();
    double[] deviations = window.deviations();
    double decay = Math.exp(-window.intervalSeconds() / seconds);
    double half = Math.sqrt(decay);
    int followed = EdgeShape.approachSamples(window, seconds);
    double over = Math.pow(decay, followed);
    double products = 0;
    double squares = 0;
    for (int i = window.length() - 1; i >= first; i--) {
      products = weights[i] * deviations[i] + decay * products;
      squares = weights[i] * weights[i] + decay * decay * squares;
      int gone = i + followed;
      if (gone < window.length()) {
        products -= over * weights[gone] * deviations[gone];
        squares -= over * over * weights[gone] * weights[gone];
      }
      double missing = half * window.stepVolts(i);
      put(i, missing * (2 * products + missing * squares));
    }
  }

  /** Squares of cosine and sine by those of a turn with twice the decay and twice the angle. */
  private void ring(EdgeShape.Setting setting) {
    double[] weights = window.weights();
    double[] deviations = window.deviations();
    double dt = window.intervalSeconds();
    int followed = RingSums.samples(window, setting.seconds());
    Turn turn = Turn.of(dt, setting, 1);
    Turn twice = turn.times(turn);
    Turn over = Turn.of(dt, setting, followed);
    Turn twiceOver = over.times(over);
    double squareDecay = Math.hypot(twice.cos, twice.sin);
    double squareOver = Math.hypot(twiceOver.cos, twiceOver.sin);
    double squares = 0;
    double squaresCos = 0;
    double squaresSin = 0;
    double cos = 0;
    double sin = 0;
    for (int i = window.length() - 1; i >= first; i--) {
      double square = weights[i] * weights[i];
      double product = weights[i] * deviations[i];
      double turned = turn.cos * cos - turn.sin * sin;
      sin = turn.cos * sin + turn.sin * cos;
      cos = product + turned;
      double squareTurned = twice.cos * squaresCos - twice.sin * squaresSin;
      squaresSin = twice.cos * squaresSin + twice.sin * squaresCos;
      squaresCos = square + squareTurned;
      squares = square + squareDecay * squares;
      int gone = i + followed;
      if (gone < window.length()) {
        double goneSquare = weights[gone] * weights[gone];
        double goneProduct = weights[gone] * deviations[gone];
        cos -= goneProduct * over.cos;
        sin -= goneProduct * over.sin;
        squaresCos -= goneSquare * twiceOver.cos;
        squaresSin -= goneSquare * twiceOver.sin;
        squares -= goneSquare * squareOver;
      }
      if (i - first < costs.length) {
        double cc = (squares + squaresCos) / 2;
        double ss = (squares - squaresCos) / 2;
        put(i, -RingSums.explained(cc, squaresSin / 2, ss, cos, sin));
      }
    }
  }

  /** {@code 1 - e^(-t/T)}, which an interval later is {@code 1 - d} more than d times itself. */
  private void softStart(double seconds) {
    double[] steps = window.steps();
    double[] rose = window.rose();
    double rest = window.intervalSeconds() / seconds;
    double decay = Math.exp(-rest);
    double gain = -Math.expm1(-rest);
    double begun = -Math.expm1(-rest / 2);
    double products = 0;
    double risenProducts = 0;
    double squares = 0;
    double risenSquares = 0;
    double shapes = 0;
    for (int i = window.length() - 1; i >= first; i--) {
      double product = rose[i] * steps[i];
      double square = steps[i] * steps[i];
      risenProducts = begun * product + gain * products + decay * risenProducts;
      products += product;
      shapes =
          begun * begun * square
              + gain * gain * squares
              + 2 * gain * decay * risenSquares
              + decay * decay * shapes;
      risenSquares = begun * square + gain * squares + decay * risenSquares;
      squares += square;
      put(i, rise(i, risenProducts, shapes));
    }
  }

  /** {@code t/T} up to 1: moments of the time since the change, and what has risen already. */
  private void ramp(double seconds) {
    double[] steps = window.steps();
    double[] rose = window.rose();
    double slope = window.intervalSeconds() / seconds;
    int rising = (int) Math.max(0, Math.ceil(1 / slope - 0.5));
    double products = 0;
    double timesProducts = 0;
    double risenProducts = 0;
    double squares = 0;
    double timesSquares = 0;
    double squaresSquares = 0;
    double risenSquares = 0;
    for (int i = window.length() - 1; i >= first; i--) {
      timesProducts += products;
      squaresSquares += 2 * timesSquares + squares;
      timesSquares += squares;
      products += rose[i] * steps[i];
      squares += steps[i] * steps[i];
      int gone = i + rising;
      if (gone < window.length()) {
        double product = rose[gone] * steps[gone];
        double square = steps[gone] * steps[gone];
        products -= product;
        timesProducts -= rising * product;
        risenProducts += product;
        squares -= square;
        timesSquares -= rising * square;
        squaresSquares -= (double) rising * rising * square;
        risenSquares += square;
      }
      double shapes = slope * slope * (squaresSquares + timesSquares + 0.25 * squares);
      put(
          i,
          rise(i, slope * (timesProducts + 0.5 * products) + risenProducts, shapes + risenSquares));
    }
  }

  private double rise(int sample, double products, double shapes) {
    return RiseSums.extraCost(products, shapes, window.unrisenSquares()[sample]);
  }

  /** A turn of the plane that shrinks it. */
  private record Turn(double cos, double sin) {
    static Turn of(double intervalSeconds, EdgeShape.Setting setting, int samples) {
      double seconds = samples * intervalSeconds;
      double decay = Math.exp(-seconds / setting.seconds());
      double angle = 2 * Math.PI * setting.hertz() * seconds;
      return new Turn(decay * Math.cos(angle), decay * Math.sin(angle));
    }

    Turn times(Turn other) {
      return new Turn(cos * other.cos - sin * other.sin, sin * other.cos + cos * other.sin);
    }
  }
}

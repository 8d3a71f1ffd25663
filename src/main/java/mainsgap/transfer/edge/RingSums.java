package mainsgap.transfer.edge;

/**
 * The normal equations of a decaying cosine and sine, freely scaled, in the deviations from a
 * window's later model: sums over the samples from a change on, in units of the spread. c stands
 * for the cosine, s for the sine, d for the deviation.
 */
record RingSums(double cc, double cs, double ss, double cd, double sd) {
  private static final double SINGULAR = 1e-9;

  static RingSums of(WeighedWindow window, int sample, EdgeShape.Setting setting) {
    double dt = window.intervalSeconds();
    double[] weights = window.weights();
    double[] deviations = window.deviations();
    int end = Math.min(window.length(), sample + samples(window, setting.seconds()));
    double step = 2 * Math.PI * setting.hertz() * dt;
    double decay = Math.exp(-dt / setting.seconds());
    double turnCos = decay * Math.cos(step);
    double turnSin = decay * Math.sin(step);
    double c = 1;
    double s = 0;
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double cd = 0;
    double sd = 0;
    for (int i = sample; i < end; i++) {
      double d = deviations[i];
      double wc = c * weights[i];
      double ws = s * weights[i];
      cc += wc * wc;
      cs += wc * ws;
      ss += ws * ws;
      cd += wc * d;
      sd += ws * d;
      double turned = c * turnCos - s * turnSin;
      s = s * turnCos + c * turnSin;
      c = turned;
    }
    return new RingSums(cc, cs, ss, cd, sd);
  }

  /** The samples over which a ring is followed, at most the window's length. */
  static int samples(WeighedWindow window, double seconds) {
    double over = Math.ceil(EdgeShape.OVER * seconds / window.intervalSeconds());
    return (int) Math.min(window.length(), over);
  }

  /** How much of the squared deviations they take away. */
  double explained() {
    return explained(cc, cs, ss, cd, sd);
  }

  /** The same without a record for it. */
  static double explained(double cc, double cs, double ss, double cd, double sd) {
    double determinant = cc * ss - cs * cs;
    return determinant > SINGULAR * cc * ss
        ? ((ss * cd - cs * sd) * cd + (cc * sd - cs * cd) * sd) / determinant
        : 0;
  }

  /** Of the cosine and the sine, in volts. */
  double[] amplitudes() {
    return isSolvable() ? new double[] {cosine(), sine()} : new double[2];
  }

  private boolean isSolvable() {
    return cc * ss - cs * cs > SINGULAR * cc * ss;
  }

  private double cosine() {
    return (ss * cd - cs * sd) / (cc * ss - cs * cs);
  }

  private double sine() {
    return (cc * sd - cs * cd) / (cc * ss - cs * cs);
  }
}

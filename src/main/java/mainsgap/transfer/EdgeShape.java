package mainsgap.transfer;

/**
 * How the voltage goes from the earlier model to the later one, from the instant of the change on.
 * Each shape has a time of its own, and its cost is that of the later model plus {@link
 * #extraCost}.
 */
enum EdgeShape {
  /** At once. */
  ABRUPT("abrupt", 0),
  /** From where the earlier model was, exponentially: a slow probe, a capacitor that discharges. */
  APPROACH("exponential approach", 1),
  /** At once, with a decaying oscillation: an output filter. */
  RING("decaying ring", 4),
  /** With an amplitude that rises exponentially. */
  SOFT_START("soft start", 1),
  /** With an amplitude that rises linearly. */
  RAMP("ramp", 1);

  private static final double[] NO_TIMES = {Double.NaN};
  private static final double[] APPROACH_SECONDS = {
    3e-6, 6e-6, 12e-6, 25e-6, 50e-6, 100e-6, 200e-6, 400e-6, 800e-6, 1.6e-3
  };
  private static final double[] SOFT_SECONDS = {1e-3, 2e-3, 4e-3, 8e-3, 15e-3, 30e-3};
  private static final double[] RAMP_SECONDS = {2e-3, 4e-3, 8e-3, 15e-3, 30e-3, 60e-3};
  private static final double[] RING_HERTZ = {300, 500, 800, 1_200, 1_800, 2_700, 4_000};
  private static final double[] RING_SECONDS = {0.3e-3, 0.8e-3, 2e-3};

  /** An exponential is over after so many of its times. */
  private static final double OVER = 6;

  private final String words;
  private final int parameters;

  EdgeShape(String words, int parameters) {
    this.words = words;
    this.parameters = parameters;
  }

  String words() {
    return words;
  }

  /** The unknowns beside the instant, for the price of a richer shape. */
  int parameters() {
    return parameters;
  }

  /** The times, in seconds, that are tried; those that the sampling can't tell are left out. */
  double[] timesSeconds(double intervalSeconds) {
    double[] all =
        switch (this) {
          case ABRUPT -> NO_TIMES;
          case APPROACH -> APPROACH_SECONDS;
          case RING -> RING_SECONDS;
          case SOFT_START -> SOFT_SECONDS;
          case RAMP -> RAMP_SECONDS;
        };
    return java.util.Arrays.stream(all)
        .filter(seconds -> Double.isNaN(seconds) || seconds > intervalSeconds)
        .toArray();
  }

  /** The ring's frequencies that are tried; one unused value for the other shapes. */
  double[] frequenciesHertz(double intervalSeconds) {
    if (this != RING) {
      return NO_TIMES;
    }
    return java.util.Arrays.stream(RING_HERTZ)
        .filter(hertz -> hertz * intervalSeconds < 0.2)
        .toArray();
  }

  /** What this shape costs more (mostly less) than the bare later model, for a change at sample. */
  double extraCost(EdgeWindow window, int sample, double seconds, double hertz) {
    return switch (this) {
      case ABRUPT -> 0;
      case RING -> -ringExplains(window, sample, seconds, hertz);
      case APPROACH, SOFT_START, RAMP -> transientCost(window, sample, seconds);
    };
  }

  private double transientCost(EdgeWindow window, int sample, double seconds) {
    double dt = window.time().intervalSeconds();
    double length = this == RAMP ? seconds : OVER * seconds;
    int end = (int) Math.min(window.length(), sample + Math.ceil(length / dt));
    double jump =
        sample < window.length() ? window.laterVolts()[sample] - window.earlierVolts()[sample] : 0;
    double decay = Math.exp(-dt / seconds);
    double left = Math.exp(-0.5 * dt / seconds);
    double extra = 0;
    for (int i = sample; i < end; i++) {
      double missing =
          switch (this) {
            case APPROACH -> jump * left;
            case SOFT_START -> (window.laterVolts()[i] - window.earlierVolts()[i]) * left;
            default ->
                (window.laterVolts()[i] - window.earlierVolts()[i])
                    * (1 - Math.min(1, (i - sample + 0.5) * dt / seconds));
          };
      left *= decay;
      double bare = window.laterDeviation(i);
      double shaped = bare + missing / window.laterSpreadVolts()[i];
      extra += shaped * shaped - bare * bare;
    }
    return extra;
  }

  /** How much of the squared deviations a decaying cosine and sine, freely scaled, take away. */
  private static double ringExplains(EdgeWindow window, int sample, double seconds, double hertz) {
    double dt = window.time().intervalSeconds();
    int end = (int) Math.min(window.length(), sample + Math.ceil(OVER * seconds / dt));
    double step = 2 * Math.PI * hertz * dt;
    double decay = Math.exp(-dt / seconds);
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
      double weight = 1 / window.laterSpreadVolts()[i];
      double d = window.laterDeviation(i);
      double wc = c * weight;
      double ws = s * weight;
      cc += wc * wc;
      cs += wc * ws;
      ss += ws * ws;
      cd += wc * d;
      sd += ws * d;
      double turned = c * turnCos - s * turnSin;
      s = s * turnCos + c * turnSin;
      c = turned;
    }
    double determinant = cc * ss - cs * cs;
    if (!(determinant > 1e-9 * cc * ss)) {
      return 0;
    }
    return (ss * cd * cd - 2 * cs * cd * sd + cc * sd * sd) / determinant;
  }
}

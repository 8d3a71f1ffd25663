package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;

/**
 * How the voltage goes from the earlier model to the later one, from the instant of the change on.
 * A shape may have a time and a frequency of its own; its cost is that of the bare later model plus
 * {@link #extraCost}.
 */
enum EdgeShape {
  /** At once. */
  ABRUPT("abrupt", 0, 1),
  /** From where the earlier model was, exponentially: a slow probe, a capacitor that discharges. */
  APPROACH("exponential approach", 1, 1.5),
  /** At once, with a decaying oscillation: an output filter. */
  RING("decaying ring", 4, 1),
  /** With an amplitude that rises exponentially. */
  SOFT_START("soft start", 2, 2.5),
  /** With an amplitude that rises linearly. */
  RAMP("ramp", 2, 2.5);

  /** The time and the frequency of a shape; not a number where it has none. */
  record Setting(double seconds, double hertz) {}

  static final Setting NO_SETTING = new Setting(Double.NaN, Double.NaN);

  private static final double RATIO = 2;
  private static final double[] ONE = {1};
  private static final double[] NEAR = {0.8, 1, 1.25};
  private static final double[] ABOUT = {0.35, 0.5, 0.65, 0.8, 0.9, 1, 1.12, 1.3, 1.6, 2};

  /** An exponential is over after so many of its times. */
  private static final double OVER = 6;

  /** A frequency that the sampling tells needs so many samples a period. */
  private static final double SAMPLES_PER_PERIOD = 5;

  private final String words;
  private final int parameters;
  private final double ambiguity;

  EdgeShape(String words, int parameters, double ambiguity) {
    this.words = words;
    this.parameters = parameters;
    this.ambiguity = ambiguity;
  }

  /**
   * How much less is known of an instant of this shape than its fit says, because real changes have
   * the shape only nearly; calibrated on generated captures.
   */
  double ambiguity() {
    return ambiguity;
  }

  String words() {
    return words;
  }

  /** The unknowns beside the instant, for the price of a richer shape. */
  int parameters() {
    return parameters;
  }

  /** The ratio of neighbouring settings. */
  double gridRatio() {
    return RATIO;
  }

  /** By how much the time may differ from its best value at instants near the best one. */
  double[] profileFactors() {
    return this == ABRUPT ? ONE : this == RING ? NEAR : ABOUT;
  }

  /** The settings that are tried, each {@link #gridRatio} apart. */
  List<Setting> settings(double intervalSeconds) {
    return switch (this) {
      case ABRUPT -> List.of(NO_SETTING);
      case APPROACH -> times(Math.max(2e-6, 0.5 * intervalSeconds), 2e-3);
      case SOFT_START -> times(0.7e-3, 40e-3);
      case RAMP -> times(1.5e-3, 80e-3);
      case RING -> rings(intervalSeconds);
    };
  }

  private static List<Setting> times(double from, double to) {
    List<Setting> settings = new ArrayList<>();
    for (double seconds = from; seconds < to; seconds *= RATIO) {
      settings.add(new Setting(seconds, Double.NaN));
    }
    return settings;
  }

  private static List<Setting> rings(double intervalSeconds) {
    List<Setting> settings = new ArrayList<>();
    double ratio = Math.sqrt(Math.sqrt(RATIO));
    for (double hertz = 300;
        hertz < Math.min(6_000, 1 / (SAMPLES_PER_PERIOD * intervalSeconds));
        hertz *= ratio) {
      settings.add(new Setting(0.4e-3, hertz));
      settings.add(new Setting(1.3e-3, hertz));
    }
    return settings;
  }

  /** What this shape costs more (mostly less) than the bare later model, for a change at sample. */
  double extraCost(EdgeWindow window, int sample, Setting setting) {
    return switch (this) {
      case ABRUPT -> 0;
      case APPROACH -> approachCost(window, sample, setting.seconds());
      case RING -> -ringExplains(window, sample, setting);
      case SOFT_START, RAMP -> riseCost(window, sample, setting.seconds());
    };
  }

  /**
   * What the later model becomes with this shape, for a change at {@code sample}; up to there the
   * value that it has at the change is held, or the earlier model where the shape starts from it.
   */
  double[] laterVolts(EdgeWindow window, int sample, Setting setting) {
    double dt = window.time().intervalSeconds();
    double[] amplitudes = this == RING ? ringAmplitudes(window, sample, setting) : ONE;
    double gain = this == SOFT_START || this == RAMP ? gain(window, sample, setting) : 1;
    int at = Math.min(sample, window.length() - 1);
    double jump = window.laterVolts()[at] - window.earlierVolts()[at];
    double[] volts = new double[window.length()];
    for (int i = 0; i < volts.length; i++) {
      double since = Math.max(0, (i - sample + (this == RING ? 0 : 0.5)) * dt);
      double over = since / setting.seconds();
      double later = window.laterVolts()[i];
      double earlier = window.earlierVolts()[i];
      double angle = 2 * Math.PI * setting.hertz() * since;
      volts[i] =
          switch (this) {
            case ABRUPT -> later;
            case APPROACH -> later - jump * Math.exp(-over);
            case RING ->
                later
                    + Math.exp(-over)
                        * (amplitudes[0] * Math.cos(angle) + amplitudes[1] * Math.sin(angle));
            case SOFT_START -> earlier + gain * (later - earlier) * (1 - Math.exp(-over));
            case RAMP -> earlier + gain * (later - earlier) * Math.min(1, over);
          };
    }
    return volts;
  }

  private static double approachCost(EdgeWindow window, int sample, double seconds) {
    if (sample >= window.length()) {
      return 0;
    }
    double dt = window.time().intervalSeconds();
    int end = (int) Math.min(window.length(), sample + Math.ceil(OVER * seconds / dt) + 1);
    double jump = window.laterVolts()[sample] - window.earlierVolts()[sample];
    double decay = Math.exp(-dt / seconds);
    double missing = jump * Math.exp(-0.5 * dt / seconds);
    double extra = 0;
    for (int i = sample; i < end; i++) {
      double bare = window.laterDeviation(i);
      double shaped = bare + missing / window.laterSpreadVolts()[i];
      extra += shaped * shaped - bare * bare;
      missing *= decay;
    }
    return extra;
  }

  /** The risen amplitude is free: a supply that still rises is fitted low. */
  private double riseCost(EdgeWindow window, int sample, double seconds) {
    Rise rise = rise(window, sample, seconds);
    return rise.shapes > 0
        ? rise.squares - rise.products * rise.products / rise.shapes - rise.bareSquares
        : 0;
  }

  private double gain(EdgeWindow window, int sample, Setting setting) {
    Rise rise = rise(window, sample, setting.seconds());
    return rise.shapes > 0 ? rise.products / rise.shapes : 1;
  }

  /** Sums, in units of the spread, of what rose, of its shape at gain 1, and of their product. */
  private record Rise(double squares, double products, double shapes, double bareSquares) {}

  private Rise rise(EdgeWindow window, int sample, double seconds) {
    double dt = window.time().intervalSeconds();
    double decay = Math.exp(-dt / seconds);
    double left = Math.exp(-0.5 * dt / seconds);
    double bareSquares = 0;
    double squares = 0;
    double products = 0;
    double shapes = 0;
    for (int i = sample; i < window.length(); i++) {
      double risen = this == SOFT_START ? 1 - left : Math.min(1, (i - sample + 0.5) * dt / seconds);
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
    return new Rise(squares, products, shapes, bareSquares);
  }

  /** How much of the squared deviations a decaying cosine and sine, freely scaled, take away. */
  private static double ringExplains(EdgeWindow window, int sample, Setting setting) {
    RingSums sums = ringSums(window, sample, setting);
    return sums.isSolvable() ? sums.cosine() * sums.cd + sums.sine() * sums.sd : 0;
  }

  private static double[] ringAmplitudes(EdgeWindow window, int sample, Setting setting) {
    RingSums sums = ringSums(window, sample, setting);
    return sums.isSolvable() ? new double[] {sums.cosine(), sums.sine()} : new double[2];
  }

  /** The normal equations of the ring's two amplitudes. */
  private record RingSums(double cc, double cs, double ss, double cd, double sd) {
    boolean isSolvable() {
      return cc * ss - cs * cs > 1e-9 * cc * ss;
    }

    double cosine() {
      return (ss * cd - cs * sd) / (cc * ss - cs * cs);
    }

    double sine() {
      return (cc * sd - cs * cd) / (cc * ss - cs * cs);
    }
  }

  private static RingSums ringSums(EdgeWindow window, int sample, Setting setting) {
    double dt = window.time().intervalSeconds();
    int end = (int) Math.min(window.length(), sample + Math.ceil(OVER * setting.seconds() / dt));
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
    return new RingSums(cc, cs, ss, cd, sd);
  }
}

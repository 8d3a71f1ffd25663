package mainsgap.transfer.edge;

import java.util.ArrayList;
import java.util.List;

/**
 * How the voltage goes from the earlier model to the later one, from the instant of the change on.
 * A shape may have a time and a frequency of its own; its cost is that of the bare later model plus
 * {@link #extraCost}.
 */
public enum EdgeShape {
  /** At once. */
  ABRUPT("abrupt", 0, 1),
  /** From where the earlier model was, exponentially: a slow probe, a capacitor that discharges. */
  APPROACH("exponential approach", 1, 1.4),
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
  static final double OVER = 6;

  /** A ring is known so many of its times before its first sample. */
  private static final double BACKWARDS = 0.4;

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

  public String words() {
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
  double extraCost(WeighedWindow window, int sample, Setting setting) {
    return switch (this) {
      case ABRUPT -> 0;
      case APPROACH -> approachCost(window, sample, setting.seconds());
      case RING -> -RingSums.of(window, sample, setting).explained();
      case SOFT_START -> RiseSums.of(Rise.EXPONENTIAL, window, sample, setting).extraCost();
      case RAMP -> RiseSums.of(Rise.LINEAR, window, sample, setting).extraCost();
    };
  }

  /**
   * What the later model becomes with this shape, for a change at {@code sample}; up to there the
   * earlier model where the shape starts from it. A ring is followed backwards a little: behind a
   * slow probe it began earlier than at once.
   */
  double[] laterVolts(EdgeWindow window, int sample, Setting setting) {
    double dt = window.time().intervalSeconds();
    WeighedWindow weighed = WeighedWindow.of(window);
    double[] amplitudes = this == RING ? RingSums.of(weighed, sample, setting).amplitudes() : ONE;
    double gain =
        switch (this) {
          case SOFT_START -> RiseSums.of(Rise.EXPONENTIAL, weighed, sample, setting).gain();
          case RAMP -> RiseSums.of(Rise.LINEAR, weighed, sample, setting).gain();
          default -> 1;
        };
    int at = Math.min(sample, window.length() - 1);
    double jump = window.laterVolts()[at] - window.earlierVolts()[at];
    double[] volts = new double[window.length()];
    for (int i = 0; i < volts.length; i++) {
      double since =
          this == RING
              ? Math.max(-BACKWARDS * setting.seconds(), (i - sample) * dt)
              : Math.max(0, (i - sample + 0.5) * dt);
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

  private static double approachCost(WeighedWindow window, int sample, double seconds) {
    if (sample >= window.length()) {
      return 0;
    }
    double dt = window.intervalSeconds();
    int end = Math.min(window.length(), sample + approachSamples(window, seconds));
    double decay = Math.exp(-dt / seconds);
    double missing = window.stepVolts(sample) * Math.exp(-0.5 * dt / seconds);
    double extra = 0;
    for (int i = sample; i < end; i++) {
      double bare = window.deviations()[i];
      double shaped = bare + missing * window.weights()[i];
      extra += shaped * shaped - bare * bare;
      missing *= decay;
    }
    return extra;
  }

  /** The samples over which an approach is followed, at most the window's length. */
  static int approachSamples(WeighedWindow window, double seconds) {
    double over = Math.ceil(OVER * seconds / window.intervalSeconds()) + 1;
    return (int) Math.min(window.length(), over);
  }
}

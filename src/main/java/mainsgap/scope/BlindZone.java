package mainsgap.scope;

/**
 * Which gaps a trigger that awaits quiet cannot see, and at which points on wave. Pure numbers: the
 * supply is a sine, the voltage in the gap is zero, and the trigger is as ideal as its description.
 * Source: geometry of the sine; for the quiet part of a healthy one, (180 + 2 asin d)/360 of a
 * period, common practice for time-out triggers.
 *
 * <p>The clock of the trigger starts anew at each crossing that it counts. What decides is the time
 * from the last such crossing before the gap, or the gap's beginning where that crosses the level,
 * to the first one after it, or its end where that does.
 *
 * @param method one of those that await quiet
 * @param levelPart the level as a part of the peak, above 0 and below 1
 * @param timeSeconds how long it must be quiet; longer than a healthy supply ever is
 * @param frequencyHertz of the supply, above 0
 */
public record BlindZone(
    CatchMethod method, double levelPart, double timeSeconds, double frequencyHertz) {
  private static final int POINTS_ON_WAVE = 720;
  private static final int DURATIONS = 200;

  /** Checks that the trigger stays still on a healthy supply. */
  public BlindZone {
    if (!method.awaitsQuiet()) {
      throw new IllegalArgumentException(method.words() + " does not await quiet");
    }
    if (!(levelPart > 0 && levelPart < 1) || !(frequencyHertz > 0)) {
      throw new IllegalArgumentException(
          "the level is a part of the peak above 0 and below 1 and the frequency above 0 Hz, found "
              + levelPart
              + " and "
              + frequencyHertz
              + " Hz");
    }
    double healthy = healthySeconds(method, levelPart, frequencyHertz);
    if (!(timeSeconds > healthy)) {
      throw new IllegalArgumentException(
          "a healthy supply is quiet for "
              + Words.of(healthy, "s")
              + ", and a trigger on "
              + Words.of(timeSeconds, "s")
              + " would fire on it: choose a longer time");
    }
  }

  /** The longest time that a healthy sine is quiet. */
  public static double healthySeconds(CatchMethod method, double levelPart, double frequencyHertz) {
    double twice = 2 * Math.toDegrees(Math.asin(levelPart));
    double degrees =
        switch (method) {
          case TIME_OUT_TRIGGER, PULSE_WIDTH_TRIGGER -> 180 + twice;
          case DROPOUT_TRIGGER, INTERVAL_TRIGGER -> 360;
          case WINDOW_TRIGGER -> twice;
          case EDGE_TRIGGER, EXTERNAL_TRIGGER, FORCED_RECORD, BACK_TO_BACK_RECORDS ->
              throw new IllegalArgumentException(method.words() + " does not await quiet");
        };
    return degrees / 360 / frequencyHertz;
  }

  /**
   * How long the trigger finds it quiet around a gap.
   *
   * @param startDegrees where on the wave the gap begins, 0 at a zero crossing on the way up
   * @param gapSeconds at least 0
   * @param stepDegrees how far the supply after the gap is ahead of the one before it
   */
  public double quietSeconds(double startDegrees, double gapSeconds, double stepDegrees) {
    double end = startDegrees + 360 * frequencyHertz * gapSeconds + stepDegrees;
    return (before(startDegrees) + after(end)) / 360 / frequencyHertz + gapSeconds;
  }

  /** Whether the trigger fires on such a gap. */
  public boolean catches(double startDegrees, double gapSeconds, double stepDegrees) {
    return quietSeconds(startDegrees, gapSeconds, stepDegrees) >= timeSeconds;
  }

  /** No gap from here on is missed, wherever it begins and whatever comes after it. */
  public double sureFromSeconds() {
    return timeSeconds;
  }

  /**
   * No gap shorter than this is caught where the supply comes back in step: the trigger's margin
   * over a healthy supply, or the part of the wave beyond the level, which a gap can hide whole.
   */
  public double neverUnderSeconds() {
    double hidden = (180 - 2 * levelDegrees()) / 360 / frequencyHertz;
    return Math.min(hidden, timeSeconds - healthySeconds(method, levelPart, frequencyHertz));
  }

  /** The part of the points on wave at which a gap in step is missed, 0 to 1. */
  public double missedPart(double gapSeconds) {
    int missed = 0;
    for (int i = 0; i < POINTS_ON_WAVE; i++) {
      missed += catches(360 * (i + 0.5) / POINTS_ON_WAVE, gapSeconds, 0) ? 0 : 1;
    }
    return (double) missed / POINTS_ON_WAVE;
  }

  /** The mean of {@link #missedPart} over all gaps that may be caught and may be missed. */
  public double missedPartBetween() {
    double from = neverUnderSeconds();
    double sum = 0;
    for (int i = 0; i < DURATIONS; i++) {
      sum += missedPart(from + (sureFromSeconds() - from) * (i + 0.5) / DURATIONS);
    }
    return sum / DURATIONS;
  }

  private double levelDegrees() {
    return Math.toDegrees(Math.asin(levelPart));
  }

  /** From the last crossing that counts to the gap's beginning; 0 where that is one itself. */
  private double before(double degrees) {
    double level = levelDegrees();
    return switch (method) {
      case TIME_OUT_TRIGGER, PULSE_WIDTH_TRIGGER ->
          isAbove(degrees) ? 0 : turned(degrees - (180 - level), 360);
      case DROPOUT_TRIGGER, INTERVAL_TRIGGER -> turned(degrees - level, 360);
      case WINDOW_TRIGGER -> isBeyond(degrees) ? 0 : turned(degrees - (180 - level), 180);
      case EDGE_TRIGGER, EXTERNAL_TRIGGER, FORCED_RECORD, BACK_TO_BACK_RECORDS -> 0;
    };
  }

  /** From the gap's end to the first crossing that counts; 0 where the end is one itself. */
  private double after(double degrees) {
    double level = levelDegrees();
    return switch (method) {
      case TIME_OUT_TRIGGER, PULSE_WIDTH_TRIGGER, DROPOUT_TRIGGER, INTERVAL_TRIGGER ->
          isAbove(degrees) ? 0 : turned(level - degrees, 360);
      case WINDOW_TRIGGER -> isBeyond(degrees) ? 0 : turned(level - degrees, 180);
      case EDGE_TRIGGER, EXTERNAL_TRIGGER, FORCED_RECORD, BACK_TO_BACK_RECORDS -> 0;
    };
  }

  private boolean isAbove(double degrees) {
    return Math.sin(Math.toRadians(degrees)) > levelPart;
  }

  private boolean isBeyond(double degrees) {
    return Math.abs(Math.sin(Math.toRadians(degrees))) > levelPart;
  }

  private static double turned(double degrees, double turn) {
    return degrees - turn * Math.floor(degrees / turn);
  }
}

package mainsgap.scope;

import mainsgap.signal.Event;

/**
 * A small isolated signal that tells of the event: from a mains-present circuit, or from an
 * auxiliary contact of the unit. Never mains itself.
 *
 * @param follows what moves it
 * @param lowVolts its lower level
 * @param highVolts its upper level
 * @param highOnMains whether it is high while mains is there, or the unit on it
 * @param delaySeconds how late it is at most; this shifts the trigger, not what is measured
 */
public record EventSignal(
    Follows follows, double lowVolts, double highVolts, boolean highOnMains, double delaySeconds) {

  /** What moves the signal. */
  public enum Follows {
    /** Mains, at the unit's input. */
    MAINS("mains-present signal"),
    /** The unit, when it leaves mains or goes back to it. */
    UNIT("unit's auxiliary contact");

    private final String words;

    Follows(String words) {
      this.words = words;
    }

    /** The signal for people. */
    public String words() {
      return words;
    }
  }

  /** Checks that there is a level between its two. */
  public EventSignal {
    if (!(highVolts > lowVolts) || Double.isInfinite(highVolts - lowVolts)) {
      throw new IllegalArgumentException(
          "a signal's high level is above its low one, found "
              + lowVolts
              + " V and "
              + highVolts
              + " V");
    }
    if (!(delaySeconds >= 0 && delaySeconds <= 10)) {
      throw new IllegalArgumentException(
          "a signal is 0 to 10 s late, found " + delaySeconds + " s");
    }
  }

  /** Half-way between its levels. */
  double levelVolts() {
    return (lowVolts + highVolts) / 2;
  }

  /** What its channel should be able to show. */
  double peakVolts() {
    return Math.max(Math.abs(lowVolts), Math.abs(highVolts));
  }

  /** Which way it goes at {@code event}. */
  Slope slope(Event event) {
    return highOnMains == (event == Event.RESTORATION) ? Slope.RISING : Slope.FALLING;
  }
}

package mainsgap.arming;

import mainsgap.signal.ChannelRole;

/**
 * Something about the live signal that is not right, or that a person should know.
 *
 * @param role the channel that shows it
 * @param kind what it is
 * @param sentence what was found against what is allowed, and what to change
 */
public record RigComplaint(ChannelRole role, Kind kind, String sentence) {

  /** What a live signal can be wrong in. */
  public enum Kind {
    /** Nothing is seen where a supply should be. */
    NO_SIGNAL(true),
    /** Samples lie on a rail of the converter. */
    CLIPPED(true),
    /** The instrument shows less than was planned. */
    RANGE(true),
    /** The voltage is not the nominal one: a probe factor, or the nominal value. */
    VOLTAGE(true),
    /** The frequency is not the nominal one, or there is none. */
    FREQUENCY(true),
    /** The load draws no current. */
    NO_LOAD(true),
    /** Two channels are connected the wrong way round, or to each other's place. */
    EXCHANGED(false),
    /** The output does not follow mains: the unit may be on its battery. */
    OUT_OF_STEP(false),
    /** Nothing wrong by itself. */
    REMARK(false);

    private final boolean mustBeMended;

    Kind(boolean mustBeMended) {
      this.mustBeMended = mustBeMended;
    }

    /** Whether a series should not begin before it is mended. */
    public boolean mustBeMended() {
      return mustBeMended;
    }
  }
}

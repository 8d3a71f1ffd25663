package mainsgap.signal;

import java.util.Locale;

/** What a channel of the instrument watches. */
public enum ChannelRole {
  /** The output of the unit under test, at the load. */
  OUTPUT,
  /** The mains, downstream of the mains switch. */
  MAINS,
  /** The second leg of a split output. */
  SECOND_LEG,
  /** The load current. */
  LOAD_CURRENT,
  /** An auxiliary contact or another event signal. */
  MARKER;

  /** The role for people, such as "load current". */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}

package mainsgap.signal;

import java.util.Locale;

/** The change of supply that a trial causes and a record holds. */
public enum Event {
  /** Mains is lost: from mains to backup. */
  LOSS,
  /** Mains is back: from backup to mains. */
  RESTORATION;

  /** The word for people and for scripts. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

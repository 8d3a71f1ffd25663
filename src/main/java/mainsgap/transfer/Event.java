package mainsgap.transfer;

/** The change of supply that a trial watches. */
public enum Event {
  /** Mains is lost: from mains to backup. */
  LOSS,
  /** Mains is back: from backup to mains. */
  RESTORATION
}

package mainsgap.scope;

/** The change of supply that a record should hold. */
public enum SupplyChange {
  /** Mains is lost: from mains to backup. */
  LOSS,
  /** Mains is back: from backup to mains. */
  RESTORATION
}

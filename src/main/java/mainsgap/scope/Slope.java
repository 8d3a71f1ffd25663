package mainsgap.scope;

/** Which way a signal goes through a level. */
public enum Slope {
  /** From below to above. */
  RISING,
  /** From above to below. */
  FALLING;

  /** The slope for people. */
  public String words() {
    return this == RISING ? "rising" : "falling";
  }
}

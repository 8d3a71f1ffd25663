package mainsgap.scope;

/** What an instrument says of its acquisition when it is asked. */
public enum AcquisitionState {
  /** Nothing is running: before arming, and after a stop. */
  IDLE,
  /** Started, but not yet able to see the event: the pre-trigger part is being filled. */
  FILLING,
  /** The trigger is awaited, or the forced record runs: the event may come now. */
  WATCHING,
  /** The trigger came; the rest of the record is being taken. */
  RECORDING,
  /** The record is whole and can be read. */
  COMPLETE
}

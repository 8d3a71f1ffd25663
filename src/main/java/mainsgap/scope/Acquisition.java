package mainsgap.scope;

/**
 * One acquisition from its start to its end, as seen by polling. 'Stopped' is also what an
 * instrument says before it starts and after a start that failed, so it counts as a whole record
 * only once the acquisition has been seen running.
 */
final class Acquisition {
  private final boolean forcedRecord;
  private boolean forceDue;
  private boolean seenRunning;

  /**
   * Begins with what was started.
   *
   * @param forcedRecord whether the event comes while the record runs
   * @param needsForce whether the instrument waits for a trigger that must be forced
   */
  Acquisition(boolean forcedRecord, boolean needsForce) {
    this.forcedRecord = forcedRecord;
    this.forceDue = forcedRecord && needsForce;
  }

  /** Whether the trigger must be forced now that the instrument has said {@code polled}. */
  boolean takeForce(AcquisitionState polled) {
    boolean now = forceDue && polled == AcquisitionState.WATCHING;
    forceDue &= !now;
    return now;
  }

  /** The instrument has told, by a register cleared before, that it ran and has a whole record. */
  void hasRun() {
    seenRunning = true;
  }

  /** What {@code polled} means for this acquisition. */
  AcquisitionState means(AcquisitionState polled) {
    if (polled == AcquisitionState.IDLE || polled == AcquisitionState.COMPLETE) {
      return seenRunning ? AcquisitionState.COMPLETE : AcquisitionState.IDLE;
    }
    seenRunning = true;
    if (!forcedRecord) {
      return polled;
    }
    if (forceDue) {
      return AcquisitionState.FILLING;
    }
    // Once it runs, the whole forced record is the time in which the event may come.
    return polled == AcquisitionState.FILLING ? polled : AcquisitionState.WATCHING;
  }
}

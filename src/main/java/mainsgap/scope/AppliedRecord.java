package mainsgap.scope;

import mainsgap.signal.TimeAxis;

/**
 * The record as the instrument has set it.
 *
 * @param intervalSeconds the sample interval
 * @param samples the record length
 * @param firstSampleSeconds the first sample's time, the trigger being at 0
 */
record AppliedRecord(double intervalSeconds, int samples, double firstSampleSeconds) {
  /** An instrument with steps of its own may make a record longer, never by more. */
  private static final double LONGEST_OVER_PLANNED = 2;

  /** Rounded settings come back a hair off. */
  private static final double HAIR = 0.005;

  /** A preamble gives the interval with few digits. */
  private static final double FARTHEST_OFF = 0.01;

  /** Long enough for a frequency, short enough to be taken at once. */
  private static final double LOOK_SECONDS = 0.2;

  private static final double LOOK_INTERVAL_SECONDS = 2e-5;

  /** The record that {@code plan} wishes for. */
  static AppliedRecord of(CapturePlan plan) {
    return new AppliedRecord(plan.intervalSeconds(), plan.samples(), -plan.preTriggerSeconds());
  }

  /** A short record of the live signal, started at once. */
  static AppliedRecord forLook(ScopeLimits limits) {
    RecordSize size =
        RecordSize.fitting(
            LOOK_SECONDS, LOOK_INTERVAL_SECONDS, RecordSize.COARSEST_SECONDS, limits);
    if (size == null) {
      throw new ScopeException(
          "a look at the live signal needs "
              + Words.of(LOOK_SECONDS, "s")
              + " in at most "
              + limits.largestRecord()
              + " samples, which the instrument's profile does not allow");
    }
    return new AppliedRecord(size.intervalSeconds(), size.samples(), 0);
  }

  double durationSeconds() {
    return samples * intervalSeconds;
  }

  /** Refuses a record that is not what was wished. */
  AppliedRecord checkedAgainst(AppliedRecord wished) {
    if (samples > wished.samples() * LONGEST_OVER_PLANNED) {
      throw new ScopeException(
          "the instrument made a record of "
              + samples
              + " samples of the "
              + wished.samples()
              + " that were planned: set 'limits' in its profile to records that it offers");
    }
    if (intervalSeconds > wished.intervalSeconds() * LONGEST_OVER_PLANNED * (1 + HAIR)) {
      throw new ScopeException(
          "the instrument samples every "
              + Words.of(intervalSeconds, "s")
              + " instead of every "
              + Words.of(wished.intervalSeconds(), "s")
              + ": set 'limits' in its profile to intervals that it offers");
    }
    if (durationSeconds() < wished.durationSeconds() * (1 - HAIR)) {
      throw new ScopeException(
          "the instrument made a record of "
              + Words.of(durationSeconds(), "s")
              + " of the "
              + Words.of(wished.durationSeconds(), "s")
              + " that are needed: set 'limits' in its profile to records that it offers");
    }
    return this;
  }

  /** Refuses a time axis that is not the one that was set. */
  TimeAxis checked(TimeAxis time) {
    if (Math.abs(time.intervalSeconds() / intervalSeconds - 1) > FARTHEST_OFF) {
      throw new ScopeException(
          "the record has a sample every "
              + Words.of(time.intervalSeconds(), "s")
              + ", but the instrument was set to one every "
              + Words.of(intervalSeconds, "s")
              + ": check that the profile fits the instrument");
    }
    return time;
  }
}

package mainsgap.scope;

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
}

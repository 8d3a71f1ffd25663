package mainsgap.scope;

import org.jspecify.annotations.Nullable;

/**
 * Records one after the other, each looked through for the event: for an instrument with no trigger
 * for it and too little memory for a forced record. An event is lost where it falls between two
 * records, or so near to the end of one that it is not whole.
 *
 * @param size of each record
 * @param blindPart the part of the time that is lost at the ends of the records; reading them takes
 *     more
 */
record BackToBackRecords(RecordSize size, double blindPart) {
  private static final double[] INTERVALS_SECONDS = {
    ForcedRecord.GOOD_INTERVAL_SECONDS, 5e-5, RecordSize.COARSEST_SECONDS
  };

  /** Longer ones would only make the hand wait for each. */
  private static final double MOST_OVER_NEEDED = 10;

  /** The finest with most of the time in sight; null where no record holds the event. */
  static @Nullable BackToBackRecords of(CaptureTimes times, ScopeLimits limits) {
    double needed = times.beforeSeconds() + times.afterSeconds();
    BackToBackRecords best = null;
    for (double interval : INTERVALS_SECONDS) {
      if (interval < limits.shortestIntervalSeconds()
          || interval > limits.longestIntervalSeconds()) {
        continue;
      }
      double duration =
          RoundValues.down125(
              Math.min(limits.largestRecord() * interval, MOST_OVER_NEEDED * needed));
      RecordSize size = RecordSize.fitting(duration, interval, interval, limits);
      if (size == null || duration <= needed) {
        continue;
      }
      best = new BackToBackRecords(size, needed / duration);
      if (best.blindPart < 0.5) {
        return best;
      }
    }
    return best;
  }
}

package mainsgap.scope;

import org.jspecify.annotations.Nullable;

/** How long a record is and how finely it is sampled; both in steps that instruments offer. */
record RecordSize(double intervalSeconds, int samples) {

  /** Slower sampling cannot place an edge within a tenth of a millisecond. */
  static final double COARSEST_SECONDS = 1e-4;

  double durationSeconds() {
    return samples * intervalSeconds;
  }

  /**
   * The finest record of {@code durationSeconds}, but no finer than {@code wishedSeconds}, that the
   * instrument's memory holds; null where that would be coarser than {@code coarsestSeconds}.
   */
  static @Nullable RecordSize fitting(
      double durationSeconds, double wishedSeconds, double coarsestSeconds, ScopeLimits limits) {
    double interval =
        RoundValues.up125(
            Math.max(
                limits.shortestIntervalSeconds(),
                Math.max(wishedSeconds, durationSeconds / limits.largestRecord())));
    if (durationSeconds / interval < limits.smallestRecord()) {
      interval =
          Math.max(
              limits.shortestIntervalSeconds(),
              RoundValues.down125(durationSeconds / limits.smallestRecord()));
    }
    interval = Math.min(interval, limits.longestIntervalSeconds());
    long samples = Math.max(limits.smallestRecord(), Math.round(durationSeconds / interval));
    if (samples > limits.largestRecord() || interval > coarsestSeconds * (1 + 1e-9)) {
      return null;
    }
    return new RecordSize(interval, (int) samples);
  }
}

package mainsgap.scope;

import java.util.List;

/**
 * The records that a family offers, where it has steps.
 *
 * @param lengths in samples, ascending; empty where any is offered
 * @param oneTwoFive whether the time for a division is 1, 2 or 5 times a power of ten
 */
record RecordSteps(List<Integer> lengths, boolean oneTwoFive) {

  RecordSteps {
    lengths = List.copyOf(lengths);
  }

  /**
   * The smallest record on offer that holds {@code wished}, with an interval no longer than its
   * own, where a longer duration does not stretch it.
   *
   * @param divisions of the whole record
   * @throws ScopeException if it is longer than all on offer
   */
  AppliedRecord fitting(AppliedRecord wished, int divisions) {
    int samples = wished.samples();
    if (!lengths.isEmpty()) {
      samples =
          lengths.stream()
              .filter(length -> length >= wished.samples())
              .findFirst()
              .orElseThrow(() -> tooLong(wished));
    }
    double duration = wished.durationSeconds();
    if (oneTwoFive) {
      duration = RoundValues.up125(duration / divisions) * divisions;
    }
    boolean asWished = samples == wished.samples() && !oneTwoFive;
    return asWished
        ? wished
        : new AppliedRecord(duration / samples, samples, wished.firstSampleSeconds());
  }

  private ScopeException tooLong(AppliedRecord wished) {
    return new ScopeException(
        "a record of "
            + wished.samples()
            + " samples was planned, the longest on offer has "
            + lengths.get(lengths.size() - 1)
            + ": set 'limits.largest-record-samples' in the profile to that");
  }
}

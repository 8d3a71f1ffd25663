package mainsgap.bench;

import mainsgap.transfer.SeriesSummary;
import mainsgap.transfer.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a series so far; null where they have no value yet.
 *
 * @param measured trials that count: all but the refused
 * @param meanMillis of the transfer times that have both ends
 * @param standardDeviationMillis of the same
 * @param maxMillis the largest; where a trial had no return, what its record shows at least
 * @param upperToleranceBoundMillis below it lie 95 % of transfers with 95 % confidence
 * @param verdict against the declared claim; null where none is given
 * @param reason one sentence: why this verdict
 */
public record RunningFigures(
    int measured,
    @Nullable Double meanMillis,
    @Nullable Double standardDeviationMillis,
    @Nullable Double maxMillis,
    @Nullable Double upperToleranceBoundMillis,
    @Nullable Verdict verdict,
    @Nullable String reason) {

  /** Before the first trial. */
  public static final RunningFigures NONE =
      new RunningFigures(0, null, null, null, null, null, null);

  static RunningFigures of(SeriesSummary summary) {
    return new RunningFigures(
        summary.n(),
        summary.meanMillis(),
        summary.standardDeviationMillis(),
        summary.maxMillis(),
        summary.upperToleranceBoundMillis(),
        summary.verdict(),
        summary.reason());
  }
}

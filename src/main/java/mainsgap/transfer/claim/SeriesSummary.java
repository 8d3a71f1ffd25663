package mainsgap.transfer.claim;

import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * The figures and the verdict of a series; null where there is no value.
 *
 * @param n the valid trials: all but the refused
 * @param noReturns those among them that had no return in their record
 * @param meanMillis of the transfer times with both ends; a trial without interruption counts as 0
 * @param standardDeviationMillis of the same, from two on
 * @param medianMillis of all valid trials, those without return being the largest; null where it
 *     falls on one of these
 * @param maxMillis the largest; with trials that had no return, what is shown at least
 * @param upperToleranceBoundMillis mean + k1 s: under the normal distribution 95 % of transfers lie
 *     below it, with 95 % confidence; null under 3 trials or with a trial without return
 * @param commonUncertaintyMillis the part of U that all trials share, the largest of the series: a
 *     claim is met by the bound only with this on top
 * @param verdict against a declared maximum; null where none is declared
 * @param reason one sentence: why this verdict, or why none
 */
public record SeriesSummary(
    int n,
    int noReturns,
    @Nullable Double meanMillis,
    @Nullable Double standardDeviationMillis,
    @Nullable Double medianMillis,
    @Nullable Double maxMillis,
    @Nullable Double upperToleranceBoundMillis,
    double commonUncertaintyMillis,
    @Nullable Verdict verdict,
    String reason) {}

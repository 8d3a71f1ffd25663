package mainsgap.bench;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.SeriesSummary;
import mainsgap.transfer.claim.SeriesVerdict;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a series so far, without the trials set aside; null where they have no value yet.
 *
 * @param measured trials that count: all but the refused and those set aside
 * @param meanMillis of the transfer times that have both ends
 * @param standardDeviationMillis of the same
 * @param medianMillis of all that count, those without return being the largest
 * @param maxMillis the largest; where a trial had no return, what its record shows at least
 * @param upperToleranceBoundMillis below it lie 95 % of transfers with 95 % confidence
 * @param guardedLimitMillis the declared maximum less the largest U so far: above it no transfer of
 *     that U is shown to be within; the declared maximum itself where the rule has no guard band;
 *     null where none is declared or none measured
 * @param verdict against the declared claim; null where none is given
 * @param reason one sentence: why this verdict, and which trials were set aside
 * @param setAside the trials that were set aside
 */
public record RunningFigures(
    int measured,
    @Nullable Double meanMillis,
    @Nullable Double standardDeviationMillis,
    @Nullable Double medianMillis,
    @Nullable Double maxMillis,
    @Nullable Double upperToleranceBoundMillis,
    @Nullable Double guardedLimitMillis,
    @Nullable Verdict verdict,
    @Nullable String reason,
    List<SetAsideTrial> setAside) {

  /** Before the first trial. */
  public static final RunningFigures NONE =
      new RunningFigures(0, null, null, null, null, null, null, null, null, List.of());

  /** Takes its own copy. */
  public RunningFigures {
    setAside = List.copyOf(setAside);
  }

  /** The figures of {@code trials}; those set aside are left out, and named. */
  static RunningFigures of(
      Collection<TrialReport> trials, @Nullable DeclaredClaim claim, DecisionRule rule) {
    List<Outcome> standing = new ArrayList<>();
    List<SetAsideTrial> setAside = new ArrayList<>();
    for (TrialReport trial : trials) {
      String reason = trial.setAsideReason();
      if (reason == null) {
        standing.add(trial.outcome());
      } else {
        Verdict verdict = trial.judgement() == null ? null : trial.judgement().verdict();
        setAside.add(new SetAsideTrial(trial.number(), verdict, reason));
      }
    }
    if (standing.isEmpty() && setAside.isEmpty()) {
      return NONE;
    }
    SeriesSummary summary = SeriesVerdict.judge(standing, claim, rule);
    String aside = SetAsideTrial.words(setAside);
    return new RunningFigures(
        summary.n(),
        summary.meanMillis(),
        summary.standardDeviationMillis(),
        summary.medianMillis(),
        summary.maxMillis(),
        summary.upperToleranceBoundMillis(),
        guardedLimitMillis(standing, claim, rule),
        summary.verdict(),
        aside.isEmpty() ? summary.reason() : summary.reason() + "; " + aside,
        setAside);
  }

  private static @Nullable Double guardedLimitMillis(
      List<Outcome> outcomes, @Nullable DeclaredClaim claim, DecisionRule rule) {
    if (claim == null || claim.kind() == DeclaredClaim.Kind.TYPICAL) {
      return null;
    }
    List<Double> uncertainties =
        outcomes.stream()
            .filter(Measured.class::isInstance)
            .map(outcome -> ((Measured) outcome).uncertaintyMillis())
            .toList();
    if (uncertainties.isEmpty()) {
      return null;
    }
    double guard =
        rule == DecisionRule.SIMPLE
            ? 0
            : uncertainties.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    return claim.millis() - guard;
  }
}

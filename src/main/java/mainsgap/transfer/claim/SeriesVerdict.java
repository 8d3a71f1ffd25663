package mainsgap.transfer.claim;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import mainsgap.statistics.Sample;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import mainsgap.transfer.outcome.Wording;
import org.jspecify.annotations.Nullable;

/**
 * The verdict of a series against a declared maximum: FAIL where any trial fails, PASS where none
 * does and the 95/95 upper bound, with the common part of the uncertainty, is within the claim.
 */
public final class SeriesVerdict {
  private SeriesVerdict() {}

  /** Sums up the trials of a series, each judged by the default rule. */
  public static SeriesSummary judge(List<Outcome> outcomes, @Nullable DeclaredClaim claim) {
    return judge(outcomes, claim, DecisionRule.GUARDED);
  }

  /**
   * Sums up the trials of a series. Trials that were set aside are the caller's to leave out. The
   * bound is held against the claim in the same way whatever the rule of the trials.
   *
   * @param outcomes of the trials; refused ones do not count
   * @param claim what is declared, or null
   * @param rule by which each trial is judged
   */
  public static SeriesSummary judge(
      List<Outcome> outcomes, @Nullable DeclaredClaim claim, DecisionRule rule) {
    SeriesFigures figures = SeriesFigures.of(outcomes);
    Finding finding =
        claim == null ? Finding.none(unclaimed(figures)) : held(outcomes, figures, claim, rule);
    Sample sample = figures.sample();
    return new SeriesSummary(
        figures.n(),
        figures.noReturns(),
        sample == null ? null : (Double) sample.mean(),
        sample == null || sample.n() < 2 ? null : (Double) sample.standardDeviation(),
        figures.medianMillis(),
        figures.maxMillis(),
        figures.upperBoundMillis(),
        figures.commonMillis(),
        finding.verdict(),
        finding.reason());
  }

  private static Finding held(
      List<Outcome> outcomes, SeriesFigures figures, DeclaredClaim claim, DecisionRule rule) {
    if (claim.kind() == DeclaredClaim.Kind.TYPICAL) {
      return Finding.none(besideTypical(figures, claim));
    }
    Map<Verdict, Integer> counts = counts(outcomes, claim, rule);
    Double bound = figures.upperBoundOfLongestMillis();
    int n = figures.n();
    int failed = counts.getOrDefault(Verdict.FAIL, 0);
    String declared = claim.inSentence();
    if (failed > 0) {
      return new Finding(
          Verdict.FAIL,
          failed
              + " of "
              + n
              + (rule.failureIsShown()
                  ? " failed: longer than " + declared + " is shown"
                  : " failed against " + declared + " by " + rule.title()));
    }
    if (bound == null) {
      return Finding.inconclusive(noBound(figures));
    }
    if (figures.open() > 0) {
      return Finding.inconclusive(
          figures.open()
              + " of "
              + n
              + " may hide a longer interruption: on a second leg that was not measured or did not"
              + " return, or after the return, whose length is not known");
    }
    if (claim.allows(bound + figures.commonMillis())) {
      return new Finding(Verdict.PASS, bound(figures, bound) + " is within " + declared);
    }
    int passed = counts.getOrDefault(Verdict.PASS, 0);
    return Finding.inconclusive(
        (passed == n ? "all " + n : passed + " of " + n)
            + " passed, the claim is not yet shown: "
            + bound(figures, bound)
            + " is not within "
            + declared);
  }

  private static Map<Verdict, Integer> counts(
      List<Outcome> outcomes, DeclaredClaim claim, DecisionRule rule) {
    Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
    for (Outcome outcome : outcomes) {
      TrialVerdict.judge(outcome, claim, rule)
          .ifPresent(judgement -> counts.merge(judgement.verdict(), 1, Integer::sum));
    }
    return counts;
  }

  private static String bound(SeriesFigures figures, double bound) {
    if (figures.noInterruptions() == figures.n() && figures.longest().equals(figures.readings())) {
      return "no interruption in any of " + figures.n() + " trials, which";
    }
    return "the upper bound "
        + (figures.longest().equals(figures.readings())
            ? ""
            : "of the longest interruption in each trial, on either leg or after the return, ")
        + Wording.time(bound)
        + " (95 % of transfers with 95 % confidence, normal distribution, n = "
        + figures.n()
        + ") + "
        + Wording.time(figures.commonMillis())
        + " common uncertainty";
  }

  private static String noBound(SeriesFigures figures) {
    if (figures.noReturns() > 0) {
      return figures.noReturns()
          + " of "
          + figures.n()
          + " had no return in the record: its time is only known to be the largest, so there is"
          + " no normal bound";
    }
    return figures.n()
        + (figures.n() == 1 ? " valid trial" : " valid trials")
        + ": an upper bound needs at least "
        + SeriesFigures.FEWEST_FOR_BOUND;
  }

  private static String unclaimed(SeriesFigures figures) {
    return figures.upperBoundMillis() == null
        ? "no declared time to judge; " + noBound(figures)
        : "no declared time to judge";
  }

  private static String besideTypical(SeriesFigures figures, DeclaredClaim claim) {
    Double median = figures.medianMillis();
    String declared = claim.inSentence();
    if (median == null) {
      return "no median to compare with " + declared + ", which is not judged as a maximum";
    }
    return "the median "
        + Wording.time(median)
        + " is "
        + (claim.allows(median) ? "within " : "above ")
        + declared
        + ", which is not judged as a maximum";
  }

  /** A verdict, where there is one, and why. */
  private record Finding(@Nullable Verdict verdict, String reason) {

    static Finding none(String reason) {
      return new Finding(null, reason);
    }

    static Finding inconclusive(String reason) {
      return new Finding(Verdict.INCONCLUSIVE, reason);
    }
  }
}

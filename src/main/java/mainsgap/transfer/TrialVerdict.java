package mainsgap.transfer;

import java.util.Optional;
import java.util.OptionalDouble;
import mainsgap.transfer.DecisionRule.Statement;

/** The verdict of one trial against a declared transfer time, by one rule. */
public final class TrialVerdict {
  private final DeclaredClaim claim;
  private final DecisionRule rule;
  private final String declared;

  private TrialVerdict(DeclaredClaim claim, DecisionRule rule) {
    this.claim = claim;
    this.rule = rule;
    this.declared = Wording.declared(claim);
  }

  /** Holds {@code outcome} against {@code claim} by the default rule. */
  public static Optional<Judgement> judge(Outcome outcome, DeclaredClaim claim) {
    return judge(outcome, claim, DecisionRule.GUARDED);
  }

  /**
   * Holds {@code outcome} against {@code claim}. A refused capture carries no measurement to judge,
   * and a typical value is no limit for one trial: both give no judgement. A figure that is not a
   * number is never a PASS or a FAIL.
   *
   * <p>Whatever the rule: where the mains switch bounced, a PASS is one from its first opening and
   * a FAIL one from its last; a time of which only the least is known can fail, not pass; and
   * further interruptions are judged by the longest of them, and forbid a PASS where no length is
   * known.
   */
  public static Optional<Judgement> judge(Outcome outcome, DeclaredClaim claim, DecisionRule rule) {
    if (claim.kind() == DeclaredClaim.Kind.TYPICAL) {
      return Optional.empty();
    }
    TrialVerdict verdict = new TrialVerdict(claim, rule);
    return switch (outcome.kind()) {
      case MEASURED -> Optional.of(verdict.ofBothLegs((Measured) outcome));
      case NO_RETURN -> Optional.of(verdict.of((NoReturn) outcome));
      case NO_INTERRUPTION -> Optional.of(verdict.judgement(rule.acceptance(), outcome.sentence()));
      case REFUSED -> Optional.empty();
    };
  }

  /** A split output is as good as the worse of its legs. */
  private Judgement ofBothLegs(Measured measured) {
    Judgement output = of(measured);
    OtherChannels.SecondLeg leg = measured.others().secondLeg();
    if (leg == null) {
      return output;
    }
    Judgement second = of(leg, measured.lastOpeningSeconds() - measured.lossSeconds());
    return isWorse(second.verdict(), output.verdict()) ? second : output;
  }

  private static boolean isWorse(Verdict one, Verdict other) {
    return one != other && (one == Verdict.FAIL || other == Verdict.PASS);
  }

  private Judgement of(OtherChannels.SecondLeg leg, double bounceSeconds) {
    if (leg.refused() != null) {
      return judgement(rule.abstention(), "second leg: not measured: " + leg.refused());
    }
    Double transfer = leg.transferMillis();
    if (transfer == null) {
      double shown = leg.atLeastMillis() == null ? 0 : leg.atLeastMillis();
      return ofNoReturn(
          "second leg: no return within ", gap(shown, bounceSeconds, leg.uncertaintyMillis()));
    }
    Gap gap = gap(transfer, bounceSeconds, leg.uncertaintyMillis());
    return gap.failsOnlyFromFirstOpening()
        ? judgement(rule.abstention(), "second leg: " + bounced(gap))
        : judgement(gap.statement(), "second leg: " + sentence(gap, gap.statement()));
  }

  private Judgement of(Measured measured) {
    Gap gap =
        gap(
            measured.transferMillis(),
            measured.lastOpeningSeconds() - measured.lossSeconds(),
            measured.uncertaintyMillis());
    String usable = Wording.usable(measured.transferMillis(), measured.usableMillis());
    if (gap.failsOnlyFromFirstOpening()) {
      return judgement(rule.abstention(), bounced(gap) + usable);
    }
    Statement statement = gap.statement();
    String sentence = sentence(gap, statement) + probability(measured);
    FurtherInterruptions further = measured.furtherInterruptions();
    if (statement.verdict() == Verdict.PASS && further.isLengthUnknown()) {
      return judgement(
          rule.abstention(),
          sentence
              + ", but further interruptions follow ("
              + further.count()
              + "), whose lengths are not known"
              + usable);
    }
    Judgement first = judgement(statement, sentence + usable);
    Double longest = further.longestMillis();
    if (longest == null) {
      return first;
    }
    Gap worst = gap(longest, 0, further.uncertaintyMillis());
    Judgement later =
        judgement(
            worst.statement(),
            "further interruption, the longest of "
                + further.count()
                + ": "
                + sentence(worst, worst.statement()));
    if (further.isOpen() && later.verdict() != Verdict.FAIL && first.verdict() == Verdict.PASS) {
      return judgement(
          rule.abstention(),
          sentence + ", but the record ends in a further interruption: record longer" + usable);
    }
    return isWorse(later.verdict(), first.verdict()) ? later : first;
  }

  private Judgement of(NoReturn noReturn) {
    return ofNoReturn(
        noReturn.comesBackTooLate() ? OutcomeNotes.TOO_LATE + ", not within " : "no return within ",
        gap(
            noReturn.atLeastMillis(),
            noReturn.lastOpeningSeconds() - noReturn.lossSeconds(),
            noReturn.uncertaintyMillis()));
  }

  private Judgement ofNoReturn(String found, Gap gap) {
    String shown = found + Wording.roundedTime(gap.millis(), gap.uncertaintyMillis());
    if (gap.fromLastOpening().verdict() == Verdict.FAIL) {
      return judgement(gap.fromLastOpening(), shown + failure());
    }
    return gap.failsOnlyFromFirstOpening()
        ? judgement(rule.abstention(), shown + ", and the " + bounced(gap))
        : judgement(
            rule.abstention(), shown + ": the record is too short to tell against " + declared);
  }

  private String failure() {
    return rule == DecisionRule.TWO_WAY
        ? ", not shown to be within " + declared
        : ", longer than " + declared;
  }

  private String sentence(Gap gap, Statement statement) {
    String time = Wording.time(gap.millis(), gap.uncertaintyMillis());
    return switch (statement) {
      case ACCEPTED -> time + " is within " + declared;
      case REJECTED -> time + " is longer than " + declared;
      case NEITHER -> time + " is too close to " + declared + " to tell";
      case PASS, CONDITIONAL_PASS, CONDITIONAL_FAIL, FAIL, NONE ->
          time + " against " + declared + ": " + statement.words();
    };
  }

  /** The other rules are told with the risk that they take. */
  private String probability(Measured measured) {
    OptionalDouble probability = Conformance.of(measured, claim);
    return rule == DecisionRule.GUARDED || probability.isEmpty()
        ? ""
        : " (probability of conformance " + Wording.probability(probability.getAsDouble()) + ")";
  }

  private String bounced(Gap gap) {
    String first = Wording.roundedTime(gap.millis(), gap.uncertaintyMillis());
    String last = Wording.time(gap.fromLastOpeningMillis(), gap.uncertaintyMillis());
    return rule == DecisionRule.GUARDED
        ? "mains switch bounced: "
            + first
            + " from its first opening is longer than "
            + declared
            + ", "
            + last
            + " from its last is not shown to be"
        : "mains switch bounced: against "
            + declared
            + ", "
            + first
            + " from its first opening is a "
            + gap.statement().words()
            + ", "
            + last
            + " from its last a "
            + gap.fromLastOpening().words();
  }

  private Judgement judgement(Statement statement, String reason) {
    return new Judgement(statement.verdict(), rule.title(), statement.words(), reason);
  }

  private Gap gap(double millis, double bounceSeconds, double u) {
    double fromLastOpeningMillis = millis - bounceSeconds * 1e3;
    return new Gap(
        millis,
        fromLastOpeningMillis,
        u,
        rule.statement(millis, u, claim),
        rule.statement(fromLastOpeningMillis, u, claim));
  }

  /**
   * A gap as it is judged.
   *
   * @param millis from the first opening of the mains switch
   * @param fromLastOpeningMillis from its last opening; the same where it did not bounce
   * @param uncertaintyMillis of both
   * @param statement what the rule says of the one
   * @param fromLastOpening what it says of the other
   */
  private record Gap(
      double millis,
      double fromLastOpeningMillis,
      double uncertaintyMillis,
      Statement statement,
      Statement fromLastOpening) {

    boolean failsOnlyFromFirstOpening() {
      return statement.verdict() == Verdict.FAIL && fromLastOpening.verdict() != Verdict.FAIL;
    }
  }
}

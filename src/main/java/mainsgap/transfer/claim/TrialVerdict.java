package mainsgap.transfer.claim;

import java.util.Optional;
import java.util.OptionalDouble;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule.Statement;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.OutcomeNotes;
import mainsgap.transfer.outcome.Verdict;
import mainsgap.transfer.outcome.Wording;
import org.jspecify.annotations.Nullable;

/** The verdict of one trial against a declared transfer time, by one rule. */
public final class TrialVerdict {
  private final DeclaredClaim claim;
  private final DecisionRule rule;
  private final String declared;

  private TrialVerdict(DeclaredClaim claim, DecisionRule rule) {
    this.claim = claim;
    this.rule = rule;
    this.declared = claim.inSentence();
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
   * <p>Whatever the rule: where the mains switch bounced as it opened, a PASS is one from its first
   * opening and a FAIL one from its last (at a restoration the contact that opens is the unit's
   * own, and the first opening counts); a time of which only the least is known can fail, not pass;
   * further interruptions are judged by the longest of them, and forbid a PASS where no length is
   * known or the record ends in one; a split output is as good as the worse of its legs, and no
   * better than a leg that could not be measured.
   */
  public static Optional<Judgement> judge(Outcome outcome, DeclaredClaim claim, DecisionRule rule) {
    if (claim.kind() == DeclaredClaim.Kind.TYPICAL) {
      return Optional.empty();
    }
    TrialVerdict verdict = new TrialVerdict(claim, rule);
    return switch (outcome.kind()) {
      case MEASURED -> Optional.of(verdict.of((Measured) outcome));
      case NO_RETURN -> Optional.of(verdict.of((NoReturn) outcome));
      case NO_INTERRUPTION -> Optional.of(verdict.of((NoInterruption) outcome));
      case REFUSED -> Optional.empty();
    };
  }

  private Judgement of(Measured measured) {
    double bounceSeconds =
        bounceSeconds(measured.event(), measured.lossSeconds(), measured.lastOpeningSeconds());
    String usable = Wording.usable(measured.transferMillis(), measured.usableMillis());
    Gap gap = gap(measured.transferMillis(), bounceSeconds, measured.uncertaintyMillis());
    Judgement output = ofGap("", gap, measured.budget().combinedMillis(), usable);
    Judgement further = ofFurther("", measured.furtherInterruptions());
    return worse(worse(output, further), ofSecondLeg(measured, bounceSeconds));
  }

  private Judgement of(NoReturn noReturn) {
    double bounceSeconds =
        bounceSeconds(noReturn.event(), noReturn.lossSeconds(), noReturn.lastOpeningSeconds());
    Judgement output =
        ofNoReturn(
            noReturn.comesBackTooLate()
                ? OutcomeNotes.TOO_LATE + ", not within "
                : "no return within ",
            gap(noReturn.atLeastMillis(), bounceSeconds, noReturn.uncertaintyMillis()));
    return worse(output, ofSecondLeg(noReturn, bounceSeconds));
  }

  private Judgement of(NoInterruption none) {
    return worse(judgement(rule.acceptance(), none.sentence()), ofSecondLeg(none, 0));
  }

  /** Only at a loss is it the mains switch that opens. */
  private static double bounceSeconds(Event event, double lossSeconds, double lastOpeningSeconds) {
    return event == Event.LOSS ? lastOpeningSeconds - lossSeconds : 0;
  }

  private @Nullable Judgement ofSecondLeg(Outcome outcome, double bounceSeconds) {
    OtherChannels.SecondLeg leg = outcome.others().secondLeg();
    if (leg == null) {
      return null;
    }
    String second = "second leg: ";
    if (leg.refused() != null) {
      return judgement(rule.abstention(), second + "not measured: " + leg.refused());
    }
    if (leg.isUninterrupted()) {
      return judgement(
          rule.acceptance(),
          second + "no interruption longer than " + Wording.time(leg.uncertaintyMillis()));
    }
    Double transfer = leg.transferMillis();
    if (transfer == null) {
      double shown = leg.atLeastMillis() == null ? 0 : leg.atLeastMillis();
      return ofNoReturn(
          second + "no return within ", gap(shown, bounceSeconds, leg.uncertaintyMillis()));
    }
    Gap gap = gap(transfer, bounceSeconds, leg.uncertaintyMillis());
    Judgement itself = ofGap(second, gap, leg.uncertaintyMillis() / 2, "");
    return worse(itself, ofFurther(second, leg.furtherInterruptions()));
  }

  /** The one that forbids more; the first where both say the same. */
  private static Judgement worse(Judgement first, @Nullable Judgement second) {
    return second != null && isWorse(second.verdict(), first.verdict()) ? second : first;
  }

  private static boolean isWorse(Verdict one, Verdict other) {
    return one != other && (one == Verdict.FAIL || other == Verdict.PASS);
  }

  private Judgement ofGap(String whose, Gap gap, double standardMillis, String usable) {
    return gap.failsOnlyFromFirstOpening()
        ? judgement(rule.abstention(), whose + bounced(gap) + usable)
        : judgement(
            gap.statement(),
            whose
                + sentence(gap, gap.statement())
                + probability(gap.millis(), standardMillis)
                + usable);
  }

  private @Nullable Judgement ofFurther(String whose, FurtherInterruptions further) {
    if (further.count() == 0) {
      return null;
    }
    Double longest = further.longestMillis();
    if (longest == null) {
      return judgement(
          rule.abstention(),
          whose
              + "further interruptions follow the return ("
              + further.count()
              + "), whose lengths are not known");
    }
    Gap gap = gap(longest, 0, further.uncertaintyMillis());
    if (further.isOpen() && gap.statement().verdict() != Verdict.FAIL) {
      return judgement(
          rule.abstention(),
          whose
              + "the record ends in a further interruption, which may become longer than "
              + declared
              + ": record longer");
    }
    return judgement(
        gap.statement(),
        whose
            + "further interruption, the longest of "
            + further.count()
            + ": "
            + sentence(gap, gap.statement())
            + probability(longest, further.uncertaintyMillis() / 2));
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
  private String probability(double millis, double standardMillis) {
    OptionalDouble probability = Conformance.of(millis, standardMillis, claim);
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

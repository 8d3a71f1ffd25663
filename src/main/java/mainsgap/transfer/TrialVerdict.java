package mainsgap.transfer;

import java.util.Optional;

/**
 * The verdict of one trial against a declared transfer time: guarded acceptance and guarded
 * rejection with a guard band as wide as the expanded uncertainty (JCGM 106, 8.3.2 and 8.3.3; the
 * clauses from memory).
 */
public final class TrialVerdict {
  /** The name of the rule. */
  public static final String RULE = "guarded acceptance and rejection, w = U (JCGM 106)";

  private static final String ACCEPTED = "accepted";
  private static final String REJECTED = "rejected";
  private static final String NEITHER = "neither accepted nor rejected";

  private TrialVerdict() {}

  /**
   * Holds {@code outcome} against {@code claim}. A refused capture carries no measurement to judge,
   * and a typical value is no limit for one trial: both give no judgement. A figure that is not a
   * number is never a PASS or a FAIL.
   */
  public static Optional<Judgement> judge(Outcome outcome, DeclaredClaim claim) {
    if (claim.kind() == DeclaredClaim.Kind.TYPICAL) {
      return Optional.empty();
    }
    return switch (outcome.kind()) {
      case MEASURED -> Optional.of(measured((Measured) outcome, claim));
      case NO_RETURN -> Optional.of(noReturn((NoReturn) outcome, claim));
      case NO_INTERRUPTION -> Optional.of(accepted(outcome.sentence()));
      case REFUSED -> Optional.empty();
    };
  }

  private static Judgement measured(Measured measured, DeclaredClaim claim) {
    double u = measured.uncertaintyMillis();
    Gap gap =
        Gap.of(measured.transferMillis(), measured.lossSeconds(), measured.lastOpeningSeconds(), u);
    String time = Wording.time(gap.millis(), u);
    String declared = Wording.declared(claim);
    String usable = Wording.usable(gap.millis(), measured.usableMillis());
    if (gap.surelyLongerThan(claim)) {
      return rejected(time + " is longer than " + declared + usable);
    }
    if (gap.longerOnlyFromFirstOpening(claim)) {
      return undecided(bounced(gap, declared) + usable);
    }
    if (!gap.surelyWithin(claim)) {
      return undecided(time + " is too close to " + declared + " to tell" + usable);
    }
    if (measured.furtherInterruptions() > 0) {
      return undecided(
          time
              + " is within "
              + declared
              + ", but further interruptions follow ("
              + measured.furtherInterruptions()
              + "), whose lengths are not known"
              + usable);
    }
    return accepted(time + " is within " + declared + usable);
  }

  private static Judgement noReturn(NoReturn noReturn, DeclaredClaim claim) {
    double u = noReturn.uncertaintyMillis();
    Gap gap =
        Gap.of(noReturn.atLeastMillis(), noReturn.lossSeconds(), noReturn.lastOpeningSeconds(), u);
    String declared = Wording.declared(claim);
    String shown = "no return within " + Wording.roundedTime(gap.millis(), u);
    if (gap.surelyLongerThan(claim)) {
      return rejected(shown + ", longer than " + declared);
    }
    if (gap.longerOnlyFromFirstOpening(claim)) {
      return undecided(shown + ", and the " + bounced(gap, declared));
    }
    return undecided(shown + ": the record is too short to tell against " + declared);
  }

  private static String bounced(Gap gap, String declared) {
    return "mains switch bounced: "
        + Wording.roundedTime(gap.millis(), gap.uncertaintyMillis())
        + " from its first opening is longer than "
        + declared
        + ", "
        + Wording.time(gap.fromLastOpeningMillis(), gap.uncertaintyMillis())
        + " from its last is not shown to be";
  }

  private static Judgement accepted(String reason) {
    return new Judgement(Verdict.PASS, RULE, ACCEPTED, reason);
  }

  private static Judgement rejected(String reason) {
    return new Judgement(Verdict.FAIL, RULE, REJECTED, reason);
  }

  private static Judgement undecided(String reason) {
    return new Judgement(Verdict.INCONCLUSIVE, RULE, NEITHER, reason);
  }

  /**
   * A gap as it is judged.
   *
   * @param millis from the first opening of the mains switch
   * @param fromLastOpeningMillis from its last opening; the same where it did not bounce
   * @param uncertaintyMillis of both
   */
  private record Gap(double millis, double fromLastOpeningMillis, double uncertaintyMillis) {

    static Gap of(double millis, double lossSeconds, double lastOpeningSeconds, double u) {
      return new Gap(millis, millis - (lastOpeningSeconds - lossSeconds) * 1e3, u);
    }

    /** PASS needs the first opening to pass. */
    boolean surelyWithin(DeclaredClaim claim) {
      return claim.allows(millis + uncertaintyMillis);
    }

    /** FAIL needs the last opening to fail. */
    boolean surelyLongerThan(DeclaredClaim claim) {
      return fromLastOpeningMillis - uncertaintyMillis > claim.millis();
    }

    boolean longerOnlyFromFirstOpening(DeclaredClaim claim) {
      return millis - uncertaintyMillis > claim.millis() && !surelyLongerThan(claim);
    }
  }
}

package mainsgap.transfer.claim;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import mainsgap.transfer.outcome.Verdict;

/**
 * By what rule a measured time is held against a declared one. The rule is agreed before measuring
 * (ILAC-G8:09/2019, section 4) and goes with every result.
 *
 * <p>Each rule makes its own statements; three words stand for them everywhere. A rule of two
 * statements has no room for doubt: its 'fail' is FAIL, also where the time is only not shown to be
 * within. The conditional statements are INCONCLUSIVE.
 */
public enum DecisionRule {
  /**
   * The default: PASS and FAIL are both shown with a guard band w = U (JCGM 106, 8.3.2 and 8.3.3;
   * the clauses from memory).
   */
  GUARDED("guarded", "guarded acceptance and rejection, w = U (JCGM 106)"),

  /** Up to the limit is a pass, whatever U: at the limit the risk is up to 50 %. */
  SIMPLE("simple", "simple acceptance, w = 0 (ILAC-G8:09/2019, 4.2.1)"),

  /** Up to the limit less U is a pass, all else a fail. */
  TWO_WAY("two-way", "binary with guard band, w = U (ILAC-G8:09/2019, 4.2.2)"),

  /** Pass, conditional pass, conditional fail, fail. */
  FOUR_WAY("four-way", "non-binary with guard band, w = U (ILAC-G8:09/2019, 4.2.3)");

  private final String word;
  private final String title;

  DecisionRule(String word, String title) {
    this.word = word;
    this.title = title;
  }

  /** Its short name, for options and sessions. */
  public String word() {
    return word;
  }

  /** Its name with its source, as it is written with a result. */
  public String title() {
    return title;
  }

  /** The rule of that short name, if it is one. */
  public static Optional<DecisionRule> ofWord(String word) {
    return Stream.of(values())
        .filter(rule -> rule.word.equals(word.toLowerCase(Locale.ROOT)))
        .findFirst();
  }

  /**
   * What the rule says of one time.
   *
   * @param u the expanded uncertainty, in ms; a figure that is not a number never passes, and fails
   *     under no rule
   */
  Statement statement(double millis, double u, DeclaredClaim claim) {
    if (!Double.isFinite(millis) || !Double.isFinite(u)) {
      return abstention();
    }
    boolean within = claim.allows(millis);
    boolean surelyWithin = claim.allows(millis + u);
    boolean surelyLonger = !claim.allows(millis - u);
    return switch (this) {
      case GUARDED ->
          surelyWithin ? Statement.ACCEPTED : surelyLonger ? Statement.REJECTED : Statement.NEITHER;
      case SIMPLE -> within ? Statement.PASS : Statement.FAIL;
      case TWO_WAY -> surelyWithin ? Statement.PASS : Statement.FAIL;
      case FOUR_WAY ->
          surelyWithin
              ? Statement.PASS
              : surelyLonger
                  ? Statement.FAIL
                  : within ? Statement.CONDITIONAL_PASS : Statement.CONDITIONAL_FAIL;
    };
  }

  /** Whether its FAIL shows, beyond doubt, a longer time than declared. */
  boolean failureIsShown() {
    return this == GUARDED || this == FOUR_WAY;
  }

  /** What it says where a time is shown to be within without a figure of its own. */
  Statement acceptance() {
    return this == GUARDED ? Statement.ACCEPTED : Statement.PASS;
  }

  /** What it says where something beside the time leaves the matter open. */
  Statement abstention() {
    return this == GUARDED ? Statement.NEITHER : Statement.NONE;
  }

  /** The statements of all rules, each with the word of the three that stands for it. */
  enum Statement {
    ACCEPTED("accepted", Verdict.PASS),
    REJECTED("rejected", Verdict.FAIL),
    NEITHER("neither accepted nor rejected", Verdict.INCONCLUSIVE),
    PASS("pass", Verdict.PASS),
    CONDITIONAL_PASS("conditional pass", Verdict.INCONCLUSIVE),
    CONDITIONAL_FAIL("conditional fail", Verdict.INCONCLUSIVE),
    FAIL("fail", Verdict.FAIL),
    NONE("no statement", Verdict.INCONCLUSIVE);

    private final String words;
    private final Verdict verdict;

    Statement(String words, Verdict verdict) {
      this.words = words;
      this.verdict = verdict;
    }

    String words() {
      return words;
    }

    Verdict verdict() {
      return verdict;
    }
  }
}

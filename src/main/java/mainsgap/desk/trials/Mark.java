package mainsgap.desk.trials;

import mainsgap.bench.TrialReport;
import mainsgap.transfer.Outcome;

/** How a trial stands: told by a shape in the pictures and by a word beside it. */
enum Mark {
  PASSED("PASS", Sign.Kind.PASSED),
  FAILED("FAIL", Sign.Kind.FAILED),
  INCONCLUSIVE("INCONCLUSIVE", Sign.Kind.INCONCLUSIVE),
  /** Nothing is declared, so nothing is judged. */
  MEASURED("measured", Sign.Kind.MEASURED),
  REFUSED("refused", Sign.Kind.REFUSED),
  SET_ASIDE("set aside", Sign.Kind.MEASURED);

  private final String words;
  private final Sign.Kind sign;

  Mark(String words, Sign.Kind sign) {
    this.words = words;
    this.sign = sign;
  }

  static Mark of(TrialReport trial) {
    return trial.setAsideReason() == null ? asMeasured(trial) : SET_ASIDE;
  }

  /** The same without regard to whether it was set aside. */
  static Mark asMeasured(TrialReport trial) {
    if (trial.outcome().kind() == Outcome.Kind.REFUSED) {
      return REFUSED;
    }
    if (trial.judgement() == null) {
      return MEASURED;
    }
    return switch (trial.judgement().verdict()) {
      case PASS -> PASSED;
      case FAIL -> FAILED;
      case INCONCLUSIVE -> INCONCLUSIVE;
    };
  }

  String words() {
    return words;
  }

  /** What the large type says when such a trial has come in. */
  Sign.Kind sign() {
    return sign;
  }
}

package mainsgap.desk.pictures;

import mainsgap.bench.TrialReport;
import mainsgap.transfer.outcome.Outcome;

/** How a trial stands: told by a shape in the pictures and by a word beside it. */
public enum TrialMark {
  /** Shown to be within the declared time. */
  PASSED("PASS", MarkShape.CIRCLE),
  /** Shown to be longer than declared. */
  FAILED("FAIL", MarkShape.CROSS),
  /** Neither. */
  INCONCLUSIVE("INCONCLUSIVE", MarkShape.TRIANGLE),
  /** Nothing is declared, so nothing is judged. */
  MEASURED("measured", MarkShape.CIRCLE),
  /** The capture carries no measurement. */
  REFUSED("refused", MarkShape.DIAMOND),
  /** It no longer counts: drawn hollow, in the shape that it would have. */
  SET_ASIDE("set aside", MarkShape.CIRCLE);

  private final String words;
  private final MarkShape shape;

  TrialMark(String words, MarkShape shape) {
    this.words = words;
    this.shape = shape;
  }

  /** The mark of a trial as it stands now. */
  public static TrialMark of(TrialReport trial) {
    return trial.setAsideReason() == null ? asMeasured(trial) : SET_ASIDE;
  }

  /** The same without regard to whether it was set aside. */
  public static TrialMark asMeasured(TrialReport trial) {
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

  /** The mark for people. */
  public String words() {
    return words;
  }

  /** The shape that stands for it. */
  public MarkShape shape() {
    return shape;
  }

  /** Whether only its outline is drawn. */
  public boolean isHollow() {
    return this == SET_ASIDE;
  }

  /** The style class of what is drawn for it, such as "mark-passed". */
  public String styleClass() {
    return "mark-" + name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}

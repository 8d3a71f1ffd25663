package mainsgap.transfer.outcome;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a line of an uncertainty budget comes from, and how it is evaluated (JCGM 100, 4.2 and 4.3).
 * A line's name begins with the source's phrase, behind the instant that it is about.
 */
public enum BudgetSource {
  /** Between two samples nothing is known. */
  SAMPLE_INTERVAL("sample interval", Evaluation.B, "rectangular, √3"),
  /** The scatter of the samples about the models, through what the voltage does there. */
  NOISE("noise of", Evaluation.A, "scatter of samples"),
  /** The converter's step, as a part of that scatter. */
  QUANTISATION("quantisation in steps of", Evaluation.B, "step, √12"),
  /** How far the instants of the shapes that remain possible lie apart. */
  SHAPE("choice of shape", Evaluation.B, "weighted shapes"),
  /** How long the two models stay closer to each other than either may be wrong. */
  MODELS("error of the models", Evaluation.B, "rectangular, √3"),
  /** Where an output that rests does not show when it came. */
  REST(UncertaintyBudget.IN_REST, Evaluation.B, "rectangular, √3"),
  /** The accuracy that the maker of the instrument states for its clock. */
  TIME_BASE("time base", Evaluation.B, "rectangular, √3");

  /** How a standard uncertainty is come by. */
  public enum Evaluation {
    /** From the scatter of observations. */
    A,
    /** From anything else that is known. */
    B
  }

  private final String phrase;
  private final Evaluation evaluation;
  private final String distribution;

  BudgetSource(String phrase, Evaluation evaluation, String distribution) {
    this.phrase = phrase;
    this.evaluation = evaluation;
    this.distribution = distribution;
  }

  /** How the names of its lines begin, behind the instant. */
  public String phrase() {
    return phrase;
  }

  /** The type of its evaluation. */
  public Evaluation evaluation() {
    return evaluation;
  }

  /**
   * The distribution that is assumed, in words; behind it the divisor of its half-width, or of its
   * step.
   */
  public String distribution() {
    return distribution;
  }

  /** The source of a line; empty where another version of the program named it. */
  public static Optional<BudgetSource> of(UncertaintyBudget.Component component) {
    String name = component.name();
    String source = name.substring(name.indexOf(": ") < 0 ? 0 : name.indexOf(": ") + 2);
    return Stream.of(values()).filter(one -> source.startsWith(one.phrase)).findFirst();
  }
}

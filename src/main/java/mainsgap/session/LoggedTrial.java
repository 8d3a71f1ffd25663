package mainsgap.session;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.OutcomeOfFigures;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * A trial as the session keeps it; its raw capture is read apart.
 *
 * @param number from 1, without gaps
 * @param at when the capture was read
 * @param figures by the names of {@link mainsgap.transfer.outcome.Figures}
 * @param budget the uncertainty line by line; null where no transfer time was measured
 * @param sentence the outcome in words
 * @param verdictReason why the verdict is what it is; null where there is none
 * @param setAsideReason why the trial was set aside later; null where it stands
 * @param notes what a person noted about it, in the order of the notes
 * @param load how the load fared, as a person last said; null where nobody has
 * @param seal of its entry
 */
public record LoggedTrial(
    int number,
    Instant at,
    Map<String, @Nullable Object> figures,
    @Nullable UncertaintyBudget budget,
    String sentence,
    @Nullable String verdictReason,
    @Nullable String setAsideReason,
    List<String> notes,
    @Nullable LoadFate load,
    String seal) {

  /** Takes its own copies; the figures keep their order. */
  public LoggedTrial {
    figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    notes = List.copyOf(notes);
  }

  /** Whether the capture carries no measurement. */
  public boolean isRefused() {
    return "refused".equals(figures.get("outcome"));
  }

  /**
   * The outcome as far as the stored figures tell it; instants within a rounding.
   *
   * @throws SessionException if they tell none, under whatever seal
   */
  public Outcome outcome() {
    try {
      return OutcomeOfFigures.of(figures, budget);
    } catch (IllegalArgumentException e) {
      throw new SessionException("trial " + number + " does not fit: " + e.getMessage(), e);
    }
  }

  /** The number of that name, where there is one. */
  public OptionalDouble number(String name) {
    return figures.get(name) instanceof Number number
        ? OptionalDouble.of(number.doubleValue())
        : OptionalDouble.empty();
  }

  /** The verdict, where a claim was judged. */
  public Optional<Verdict> verdict() {
    return figures.get("verdict") instanceof String word
        ? Optional.of(Verdict.valueOf(word))
        : Optional.empty();
  }

  /** The verdict with its rule and reason, where a claim was judged. */
  public Optional<Judgement> judgement() {
    return verdict()
        .map(
            verdict ->
                new Judgement(
                    verdict,
                    String.valueOf(figures.get("decisionRule")),
                    String.valueOf(figures.get("ruleOutcome")),
                    verdictReason == null ? "" : verdictReason));
  }

  LoggedTrial setAside(String reason) {
    return new LoggedTrial(
        number, at, figures, budget, sentence, verdictReason, reason, notes, load, seal);
  }

  /** The same with a remark about it. */
  LoggedTrial with(Remark remark) {
    LoadFate said = LoadFate.of(remark.kind());
    return new LoggedTrial(
        number,
        at,
        figures,
        budget,
        sentence,
        verdictReason,
        setAsideReason,
        remark.kind() == Remark.Kind.NOTE
            ? Stream.concat(notes.stream(), Stream.of(remark.text())).toList()
            : notes,
        said == null ? load : said,
        seal);
  }
}

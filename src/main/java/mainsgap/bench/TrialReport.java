package mainsgap.bench;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import mainsgap.session.Addition;
import mainsgap.session.LoadFate;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Trial;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * A logged trial without its raw capture, which stays in the session.
 *
 * @param number its number in the session
 * @param at when its capture was read
 * @param outcome the measurement
 * @param judgement against the declared claim; null where none is given or the trial is refused
 * @param setAsideReason why it does not count; null where it stands
 * @param notes what a person noted about it
 * @param load how the load fared; null where nobody has said
 */
public record TrialReport(
    int number,
    Instant at,
    Outcome outcome,
    @Nullable Judgement judgement,
    @Nullable String setAsideReason,
    List<String> notes,
    @Nullable LoadFate load) {

  /** Takes its own copy. */
  public TrialReport {
    notes = List.copyOf(notes);
  }

  /** A trial to which nobody has added anything. */
  public TrialReport(int number, Instant at, Outcome outcome, @Nullable Judgement judgement) {
    this(number, at, outcome, judgement, null, List.of(), null);
  }

  static TrialReport of(Trial trial) {
    return new TrialReport(trial.number(), trial.at(), trial.outcome(), trial.judgement());
  }

  static TrialReport of(LoggedTrial trial) {
    return new TrialReport(
        trial.number(),
        trial.at(),
        trial.outcome(),
        trial.judgement().orElse(null),
        trial.setAsideReason(),
        trial.notes(),
        trial.load());
  }

  /** Whether it counts: measured and not set aside. */
  public boolean counts() {
    return setAsideReason == null && outcome.kind() != Outcome.Kind.REFUSED;
  }

  /** The same with what a person added about it. */
  TrialReport with(Addition addition) {
    String reason = setAsideReason;
    List<String> noted = notes;
    LoadFate fate = load;
    if (addition instanceof Addition.SetAside setAside) {
      reason = setAside.reason();
    } else if (addition instanceof Addition.Note note) {
      noted = Stream.concat(notes.stream(), Stream.of(note.text())).toList();
    } else if (addition instanceof Addition.Load said) {
      fate = said.fate();
    } else {
      throw new IllegalArgumentException("not known here: " + addition);
    }
    return new TrialReport(number, at, outcome, judgement, reason, noted, fate);
  }
}

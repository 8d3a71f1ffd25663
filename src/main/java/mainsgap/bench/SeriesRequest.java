package mainsgap.bench;

import java.nio.file.Path;
import java.time.Duration;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/**
 * What the user asks of a series. What is null here comes from the rig file, or else from the
 * defaults.
 *
 * @param instrument what it runs on
 * @param unit the specimen's name
 * @param claim the declared transfer time; null where none is given
 * @param rule by which it is judged
 * @param event the change of supply to be measured
 * @param nominalVolts RMS
 * @param frequencyHertz nominal
 * @param trials the number of measured trials wanted
 * @param session where it is logged
 * @param rigFile channels, probes, unit, load, conditions; needed on a real instrument
 * @param cautionsRead whether the user says that the cautions are read; needed on a real instrument
 * @param catching how the event is caught
 * @param settle how long the unit settles between trials
 * @param plan goes after what is given here and before the rig file; {@link SeriesPlan#NONE} where
 *     there is none
 * @param triggerWait how long an armed instrument waits
 * @param maxRepeats attempts that may be repeated in all
 */
public record SeriesRequest(
    InstrumentChoice instrument,
    @Nullable String unit,
    @Nullable DeclaredClaim claim,
    DecisionRule rule,
    Event event,
    @Nullable Double nominalVolts,
    @Nullable Double frequencyHertz,
    int trials,
    SessionPlace session,
    @Nullable Path rigFile,
    boolean cautionsRead,
    CatchWish catching,
    SeriesPlan plan,
    @Nullable Duration settle,
    @Nullable Duration triggerWait,
    @Nullable Integer maxRepeats) {
  /** The nominal RMS voltage where nobody says one. */
  public static final double DEFAULT_VOLTS = 230;

  /** The nominal frequency where nobody says one. */
  public static final double DEFAULT_HERTZ = 50;

  /** The same, logged elsewhere, with another number of trials. */
  public SeriesRequest loggedTo(SessionPlace place, int wanted) {
    return new SeriesRequest(
        instrument,
        unit,
        claim,
        rule,
        event,
        nominalVolts,
        frequencyHertz,
        wanted,
        place,
        rigFile,
        cautionsRead,
        catching,
        plan,
        settle,
        triggerWait,
        maxRepeats);
  }

  /** A series on {@code instrument} with defaults for all else. */
  public static SeriesRequest on(InstrumentChoice instrument, int trials) {
    return new SeriesRequest(
        instrument,
        null,
        null,
        DecisionRule.GUARDED,
        Event.LOSS,
        null,
        null,
        trials,
        SessionPlace.NEW_IN_DATA_FOLDER,
        null,
        false,
        CatchWish.AUTOMATIC,
        SeriesPlan.NONE,
        null,
        null,
        null);
  }
}

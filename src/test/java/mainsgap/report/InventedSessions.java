package mainsgap.report;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import mainsgap.session.Ending;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/** Sessions of invented units, put together in memory. */
public final class InventedSessions {
  public static final MeasuringTask LOSS_AT_230 = new MeasuringTask(Event.LOSS, 230, 50);
  private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
  private static final Supplies SUPPLIES = new Supplies(50, 0.0, 0.0, 0.0);

  private InventedSessions() {}

  public static SessionHeader header(
      String unit, MeasuringTask task, Map<String, String> conditions) {
    return new SessionHeader(
        NOON,
        "0.1.0",
        false,
        unit,
        DeclaredClaim.ofMillis(20, "20 ms"),
        task,
        "an invented oscilloscope",
        Map.of(),
        conditions);
  }

  public static Session session(SessionHeader header, Outcome... outcomes) {
    List<LoggedTrial> trials = new ArrayList<>();
    for (Outcome outcome : outcomes) {
      trials.add(trial(trials.size() + 1, outcome, header.claim(), null));
    }
    return of(header, trials);
  }

  public static Session of(SessionHeader header, List<LoggedTrial> trials) {
    return new Session(
        Path.of("invented.mainsgap"),
        1,
        header,
        trials,
        List.of(),
        Ending.COMPLETE,
        1 + trials.size(),
        "0".repeat(64));
  }

  public static LoggedTrial trial(
      int number, Outcome outcome, @Nullable DeclaredClaim claim, @Nullable String setAside) {
    Judgement judgement = claim == null ? null : TrialVerdict.judge(outcome, claim).orElse(null);
    return new LoggedTrial(
        number,
        NOON.plusSeconds(60L * number),
        Figures.of(outcome, judgement, 230),
        outcome instanceof Measured measured ? measured.budget() : null,
        outcome.sentence(),
        judgement == null ? null : judgement.reason(),
        setAside,
        List.of(),
        null,
        "0".repeat(64));
  }

  /** A session of eight trials of the usual kind about {@code meanMillis}. */
  public static Session usual(String unit, double meanMillis) {
    return session(
        header(unit, LOSS_AT_230, Map.of()),
        measured(meanMillis - 1, 2),
        measured(meanMillis - 0.5, 3),
        measured(meanMillis - 0.1, 4),
        measured(meanMillis, 5),
        measured(meanMillis + 0.1, 5),
        measured(meanMillis + 0.4, 6),
        measured(meanMillis + 0.8, 7),
        measured(meanMillis + 1, 8));
  }

  public static Measured measured(double millis, double residualPercent) {
    return measured(millis, residualPercent, 0.02);
  }

  public static Measured measured(double millis, double residualPercent, double standardMillis) {
    return new Measured(
        Event.LOSS,
        0.001,
        0.001,
        0.001 + millis / 1e3,
        0.001 + millis / 1e3,
        millis,
        new UncertaintyBudget(
            List.of(new UncertaintyBudget.Component("change points", standardMillis, false)), 2),
        FurtherInterruptions.NONE,
        millis,
        millis,
        millis + 10,
        90,
        SUPPLIES,
        new Cleanness(
            3,
            false,
            0.0,
            null,
            new Cleanness.Distortion(residualPercent / 2, 10),
            0.1,
            1.4,
            -0.5,
            1.5,
            2.5,
            0,
            11.5,
            new Cleanness.Residual(residualPercent, residualPercent, residualPercent)),
        OtherChannels.NONE);
  }

  public static Outcome noReturn(double atLeastMillis) {
    return new NoReturn(
        Event.LOSS, 0.001, 0.001, atLeastMillis, 0.1, 45, atLeastMillis, SUPPLIES, false, null);
  }

  public static Outcome noInterruption() {
    return new NoInterruption(Event.LOSS, 0.25, "the frequency changed", 0.001, 270, SUPPLIES);
  }

  public static Outcome refused() {
    return new Refused("clipped: choose 400 V or more");
  }
}

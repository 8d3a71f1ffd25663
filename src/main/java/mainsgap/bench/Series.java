package mainsgap.bench;

import java.util.List;
import mainsgap.arming.Additions;
import mainsgap.arming.ClosedBy;
import mainsgap.arming.Consent;
import mainsgap.arming.LoopEnd;
import mainsgap.arming.LoopPlan;
import mainsgap.arming.Proceed;
import mainsgap.arming.Reins;
import mainsgap.arming.Rig;
import mainsgap.arming.TrialLoop;
import mainsgap.bench.SeriesEnd.Kind;
import mainsgap.link.LinkException;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlanner;
import mainsgap.scope.ScopeException;
import mainsgap.scpi.ScpiException;
import mainsgap.session.Addition;
import mainsgap.session.SessionException;
import mainsgap.settings.SettingsException;
import mainsgap.simulation.SimulationException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;

/**
 * One series of trials, from the request to its end. Run it once; the thread that runs it owns the
 * instrument and the session file.
 */
public final class Series {
  private final SeriesRequest request;
  private final Clock clock;
  private final Proceed proceed = new Proceed();
  private final Consent consent = new Consent();
  private final Additions additions = new Additions();

  private Series(SeriesRequest request, Clock clock) {
    this.request = request;
    this.clock = clock;
  }

  /** The series that {@code request} asks for; nothing is opened yet. */
  public static Series of(SeriesRequest request) {
    return new Series(request, Clock.system());
  }

  /** Goes on sooner than the settling time ends. Any thread may call it. */
  public void proceed() {
    proceed.give();
  }

  /**
   * What would be done, one sentence each; nothing is opened.
   *
   * @throws BenchException where something needed is missing
   * @throws SettingsException where the rig file cannot be used
   */
  public List<String> rehearsal() {
    return Rehearsal.of(SeriesSetup.of(request));
  }

  /** Lets a commanded mains switch close, where that is asked for now. Any thread may call it. */
  public void letMainsClose() {
    consent.give();
  }

  /** There is nobody who could let a commanded mains switch close. */
  public void withholdConsent(String why) {
    consent.withhold(why);
  }

  /**
   * Adds to the log of the running series; the listener hears what came of it. False once the
   * series takes nothing more: then {@link KeptSession#add} is the way. Any thread may call it.
   */
  public boolean add(Addition addition) {
    return additions.give(addition);
  }

  /** Runs the series to its end; every expected end is a value. */
  public SeriesEnd run(SeriesListener listener, StopRequest stop) {
    SeriesSetup setup;
    try {
      SeriesSetup.requireCautionsRead(request);
      setup = SeriesSetup.of(request);
      requireSomebody(setup);
    } catch (BenchException | SettingsException e) {
      return SeriesEnd.beforeTheFirstTrial(Kind.WRONG_USE, "", e);
    }
    listener.measures(setup.unit(), setup.task(), request.claim());
    try (Equipment equipment = Equipment.open(setup, clock, stop)) {
      return run(setup, equipment, listener, stop);
    } catch (BenchException | SettingsException e) {
      return SeriesEnd.beforeTheFirstTrial(Kind.WRONG_USE, setup.unit(), e);
    } catch (ScopeException | ScpiException | LinkException | SimulationException e) {
      return SeriesEnd.beforeTheFirstTrial(Kind.INSTRUMENT_FAILED, setup.unit(), e);
    } catch (SessionException e) {
      return SeriesEnd.beforeTheFirstTrial(Kind.SESSION_FAILED, setup.unit(), e);
    } catch (StoppedException e) {
      return SeriesEnd.beforeTheFirstTrial(Kind.STOPPED, setup.unit(), e);
    }
  }

  private SeriesEnd run(
      SeriesSetup setup, Equipment equipment, SeriesListener listener, StopRequest stop) {
    listener.connected(equipment.instrument().identity() + ", at " + equipment.resource());
    CapturePlan plan = plan(setup, equipment);
    listener.planned(plan.explanation());
    RigSwitch commanded = setup.mainsSwitch();
    if (commanded != null) {
      listener.switchCommanded(commanded.words() + "; " + SwitchTimingWords.of(setup.timing()));
    }
    try (OpenSession session = OpenSession.open(setup, equipment, plan, clock)) {
      listener.sessionOpened(session.file());
      Tally tally = new Tally(listener, request.claim(), request.rule(), session.earlier());
      if (!session.earlier().isEmpty()) {
        listener.earlierTrials(session.earlier(), tally.figures());
      }
      LoopEnd end =
          new TrialLoop(
                  new LoopPlan(plan, setup.task(), request.trials(), setup.pace(), setup.timing()),
                  new Rig(
                      equipment.instrument(),
                      equipment.mains(),
                      session.log(),
                      new ClaimedMeasuring(setup.task(), request.claim(), request.rule())),
                  new Reins(clock, stop, proceed, consent, additions),
                  tally)
              .run();
      return new SeriesEnd(
          kind(end),
          end.sentence(),
          setup.unit(),
          setup.task(),
          tally.trials(),
          tally.figures(),
          session.file(),
          session.log().lastSeal());
    }
  }

  /**
   * Closing needs a person's fresh word, unless the rig's owner allows the rig to be unattended.
   */
  private void requireSomebody(SeriesSetup setup) {
    RigSwitch commanded = setup.mainsSwitch();
    if (commanded != null && commanded.closedBy() == ClosedBy.PROGRAM_ON_A_WORD) {
      consent
          .reasonWithheld()
          .ifPresent(
              why -> {
                throw new BenchException(why);
              });
    }
  }

  private static CapturePlan plan(SeriesSetup setup, Equipment equipment) {
    try {
      return CapturePlanner.plan(setup.captureRequest(), equipment.instrument().limits());
    } catch (ScopeException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  private static Kind kind(LoopEnd end) {
    return switch (end.reason()) {
      case DONE -> Kind.COMPLETE;
      case REPEATS_SPENT, RIG_NOT_RIGHT ->
          end.measured() > 0 ? Kind.INCOMPLETE : Kind.NOTHING_MEASURED;
      case STOPPED -> Kind.STOPPED;
      case MAINS_SWITCH, INSTRUMENT -> Kind.INSTRUMENT_FAILED;
      case SESSION -> Kind.SESSION_FAILED;
    };
  }
}

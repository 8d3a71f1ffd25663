package mainsgap.bench;

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

  /** Runs the series to its end; every expected end is a value. */
  public SeriesEnd run(SeriesListener listener, StopRequest stop) {
    SeriesSetup setup;
    try {
      setup = SeriesSetup.of(request);
    } catch (BenchException | SettingsException e) {
      return SeriesEnd.beforeTheFirstTrial(Kind.WRONG_USE, "", e);
    }
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
    try (OpenSession session = OpenSession.open(setup, equipment, plan, clock)) {
      listener.sessionOpened(session.file());
      Tally tally = new Tally(listener, request.claim(), request.rule(), session.earlier());
      LoopEnd end =
          new TrialLoop(
                  new LoopPlan(plan, setup.task(), request.trials(), setup.pace()),
                  new Rig(
                      equipment.instrument(),
                      equipment.mains(),
                      session.log(),
                      new ClaimedMeasuring(setup.task(), request.claim(), request.rule())),
                  new Reins(clock, stop, proceed),
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
      case INSTRUMENT -> Kind.INSTRUMENT_FAILED;
      case SESSION -> Kind.SESSION_FAILED;
    };
  }
}

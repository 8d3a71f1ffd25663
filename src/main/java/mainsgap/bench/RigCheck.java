package mainsgap.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import mainsgap.arming.RigComplaint;
import mainsgap.arming.RigLook;
import mainsgap.bench.RigCheckEnd.Kind;
import mainsgap.bench.RigCheckEnd.Seen;
import mainsgap.link.LinkException;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlanner;
import mainsgap.scope.Oscilloscope;
import mainsgap.scope.ScopeException;
import mainsgap.scpi.ScpiException;
import mainsgap.settings.SettingsException;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.simulation.SimulationException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;

/**
 * Looks at a rig without waiting for an event: a few cycles of the real signal, by the settings
 * that a series would have. No mains switch is moved or even spoken to, nothing is logged. The
 * thread that runs it owns the instrument.
 */
public final class RigCheck {
  private RigCheck() {}

  /** Checks the rig of {@code request} to its end; every expected end is a value. */
  public static RigCheckEnd run(
      SeriesRequest request, Consumer<String> progress, StopRequest stop) {
    SeriesSetup setup;
    try {
      SeriesSetup.requireCautionsRead(request);
      setup = SeriesSetup.of(request);
    } catch (BenchException | SettingsException e) {
      return before(Kind.WRONG_USE, e);
    }
    progress.accept("connecting to the instrument");
    try (Equipment equipment = Equipment.forALook(setup, Clock.system(), stop)) {
      stop.throwIfRequested();
      return checked(setup, equipment, progress);
    } catch (BenchException | SettingsException e) {
      return before(Kind.WRONG_USE, e);
    } catch (ScopeException | ScpiException | LinkException | SimulationException e) {
      return before(Kind.INSTRUMENT_FAILED, e);
    } catch (StoppedException e) {
      return before(Kind.STOPPED, e);
    }
  }

  private static RigCheckEnd checked(
      SeriesSetup setup, Equipment equipment, Consumer<String> progress) {
    Oscilloscope instrument = equipment.instrument();
    CapturePlan plan;
    try {
      plan = CapturePlanner.plan(setup.captureRequest(), instrument.limits());
    } catch (ScopeException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
    progress.accept("setting the instrument");
    instrument.configure(plan);
    progress.accept("taking a few cycles of the live signal");
    Capture look = instrument.look();
    instrument.disarm();
    RigLook rules = new RigLook(plan, setup.task());
    List<RigComplaint> complaints = new ArrayList<>(rules.complaints(look));
    if (namesNoLoad(setup)) {
      complaints.add(
          new RigComplaint(
              ChannelRole.LOAD_CURRENT,
              RigComplaint.Kind.REMARK,
              "this rig names no load: connect at least a small resistive load, and write down which"));
    }
    return end(
        Words.printable(instrument.identity() + ", at " + equipment.resource()),
        Seen.of(look, rules.supply(look), complaints, plan));
  }

  private static boolean namesNoLoad(SeriesSetup setup) {
    RigFile rig = setup.rig();
    return rig != null && rig.sheet().load() == null && rig.sheet().loadCurrent() == null;
  }

  private static RigCheckEnd end(String instrument, Seen seen) {
    List<RigComplaint> toMend =
        seen.complaints().stream().filter(one -> one.kind().mustBeMended()).toList();
    return toMend.isEmpty()
        ? new RigCheckEnd(Kind.RIGHT, "the rig is right: a series can begin", instrument, seen)
        : new RigCheckEnd(Kind.NOT_RIGHT, toMend.get(0).sentence(), instrument, seen);
  }

  private static RigCheckEnd before(Kind kind, RuntimeException why) {
    return new RigCheckEnd(kind, Words.printable(String.valueOf(why.getMessage())), "", null);
  }
}

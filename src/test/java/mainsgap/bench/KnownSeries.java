package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import mainsgap.arming.Additions;
import mainsgap.arming.Consent;
import mainsgap.arming.LoopEnd;
import mainsgap.arming.LoopPlan;
import mainsgap.arming.Proceed;
import mainsgap.arming.Reins;
import mainsgap.arming.Rig;
import mainsgap.arming.TrialLoop;
import mainsgap.link.ResourceName;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlanner;
import mainsgap.scope.InstrumentProfiles;
import mainsgap.scope.Oscilloscope;
import mainsgap.scope.Oscilloscopes;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionLog;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * The same series as {@code run --simulated UNIT --rated 20ms --seed N}, with the truth of each
 * trial asked from the simulation after it was measured.
 */
final class KnownSeries {
  private final SimulatedUnit unit;
  private final long seed;
  private final SeriesSetup setup;
  private final List<KnownTrial> trials = new ArrayList<>();

  private KnownSeries(SimulatedUnit unit, long seed, SeriesSetup setup) {
    this.unit = unit;
    this.seed = seed;
    this.setup = setup;
  }

  /** Runs {@code count} trials, logged into {@code folder}. */
  static List<KnownTrial> run(SimulatedUnit unit, long seed, int count, Path folder) {
    SeriesRequest request =
        new Requests(folder).simulated(unit.label(), count, CatchWish.AUTOMATIC);
    KnownSeries series = new KnownSeries(unit, seed, SeriesSetup.of(request));
    series.run(folder.resolve(unit.label() + "-" + seed + ".mainsgap"));
    return series.trials;
  }

  private void run(Path file) {
    try (SimulatedBench bench = SimulatedBench.start(SimulatedBenchSettings.of(unit, seed));
        Oscilloscope instrument =
            Oscilloscopes.open(
                ResourceName.parse(bench.resource(SimulatedInstrument.TEN_FIELD_SCOPE)),
                InstrumentProfiles.load(ProfileFolder.find()),
                SimulatedInstrument.TEN_FIELD_SCOPE.profile(),
                Clock.system(),
                new StopRequest());
        SessionLog log = SessionLog.create(file, header())) {
      LoopEnd end = loop(bench, instrument, log).run();
      assertEquals(LoopEnd.Reason.DONE, end.reason(), end.sentence());
    }
  }

  private TrialLoop loop(SimulatedBench bench, Oscilloscope instrument, SessionLog log) {
    CapturePlan plan = CapturePlanner.plan(setup.captureRequest(), instrument.limits());
    return new TrialLoop(
        new LoopPlan(plan, setup.task(), setup.request().trials(), setup.pace(), setup.timing()),
        new Rig(
            instrument,
            new SimulatedHand(bench),
            log,
            new ClaimedMeasuring(setup.task(), setup.request().claim(), setup.request().rule())),
        new Reins(Clock.system(), new StopRequest(), new Proceed(), new Consent(), new Additions()),
        new Tally(keepingTruth(bench), setup.request().claim(), setup.request().rule(), List.of()));
  }

  private SeriesListener keepingTruth(SimulatedBench bench) {
    return new SeriesListener() {
      @Override
      public void trialFinished(TrialReport trial, RunningFigures figures) {
        trials.add(
            new KnownTrial(seed, trial.number(), trial.outcome(), bench.lastTruth().orElseThrow()));
      }
    };
  }

  private SessionHeader header() {
    return new SessionHeader(
        Clock.system().instant(),
        ProgramVersion.get(),
        true,
        setup.unit(),
        setup.request().claim(),
        setup.task(),
        "simulated",
        setup.rigWords(),
        setup.conditionWords());
  }
}

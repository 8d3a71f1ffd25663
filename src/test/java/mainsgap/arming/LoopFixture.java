package mainsgap.arming;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import mainsgap.scope.Blindness;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CatchMethod;
import mainsgap.scope.PlannedTrigger;
import mainsgap.session.Addition;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionLog;
import mainsgap.session.SessionReader;
import mainsgap.session.Trial;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.waiting.ManualClock;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/** A loop on a fake bench with a real session file; remembers all that it tells. */
final class LoopFixture implements LoopListener, Measuring {
  static final Outcome A_RESULT =
      new NoReturn(
          Event.LOSS, 0, 0, 100, 1, 90, 100, new Supplies(50, null, null, null), false, null);
  static final Outcome A_REFUSAL = new Refused("no event in the capture");
  private static final Pace PACE =
      new Pace(
          Duration.ofSeconds(60),
          Duration.ofSeconds(10),
          Duration.ZERO,
          Duration.ofSeconds(30),
          Duration.ofSeconds(40),
          Duration.ofMillis(100),
          2);

  final BenchFake bench = new BenchFake();
  final ManualClock clock = new ManualClock();
  final StopRequest stop = new StopRequest();
  final Proceed proceed = new Proceed();
  final Consent consent = new Consent();
  final Additions additions = new Additions();
  final List<Addition> added = new ArrayList<>();
  final List<String> notAdded = new ArrayList<>();
  final List<LoopState> states = new ArrayList<>();
  final List<String> prompts = new ArrayList<>();
  final List<String> notes = new ArrayList<>();
  final List<Progress> progress = new ArrayList<>();
  Consumer<Progress> onProgress = news -> {};
  Consumer<LoopState> onEntering = state -> {};
  Consumer<Prompt> onPrompt = prompt -> {};
  IntFunction<Outcome> outcomes = number -> A_RESULT;
  CatchMethod method = CatchMethod.TIME_OUT_TRIGGER;
  Event event = Event.LOSS;
  MainsSwitch mains = bench;
  Pace pace = PACE;
  SwitchTiming timing = SwitchTiming.BY_HAND;
  private final Path file;
  private Runnable cutLog = () -> {};
  private int measurements;

  LoopFixture(Path folder) {
    file = folder.resolve("session.mainsgap");
  }

  LoopEnd run(int trials) {
    MeasuringTask task = task();
    try (SessionLog log = SessionLog.create(file, header(task))) {
      cutLog = log::close;
      return new TrialLoop(
              new LoopPlan(capturePlan(), task, trials, pace, timing),
              new Rig(bench, mains, log, this),
              new Reins(clock, stop, proceed, consent, additions),
              this)
          .run();
    }
  }

  MeasuringTask task() {
    return new MeasuringTask(event, 230, 50);
  }

  /** From now on the log can't be written. */
  void cutLog() {
    cutLog.run();
  }

  private CapturePlan capturePlan() {
    Map<ChannelRole, CapturePlan.ChannelPlan> channels = BenchFake.channels();
    return new CapturePlan(
        method,
        channels,
        1e-5,
        100_000,
        0.1,
        method == CatchMethod.FORCED_RECORD
            ? null
            : PlannedTrigger.quiet(method, ChannelRole.OUTPUT, 97, 0.013),
        event == Event.RESTORATION ? 300 : 0,
        Blindness.NONE,
        List.of());
  }

  private static SessionHeader header(MeasuringTask task) {
    return new SessionHeader(
        Instant.parse("2026-01-01T00:00:00Z"),
        "test",
        true,
        "Invented Lumengrove 600",
        null,
        task,
        "fake",
        Map.of(),
        Map.of());
  }

  /** What is in the file, read anew with all seals checked. */
  Session session() {
    try (SessionReader reader = SessionReader.open(file)) {
      return reader.session();
    }
  }

  @Override
  public Outcome measure(Capture capture) {
    return outcomes.apply(++measurements);
  }

  @Override
  public @Nullable Judgement judge(Outcome outcome) {
    return null;
  }

  @Override
  public void entered(LoopState state) {
    states.add(state);
    onEntering.accept(state);
  }

  @Override
  public void prompted(Prompt prompt) {
    prompts.add(prompt.sentence());
    onPrompt.accept(prompt);
  }

  @Override
  public void progressed(Progress news) {
    progress.add(news);
    onProgress.accept(news);
  }

  @Override
  public void noted(String sentence) {
    notes.add(sentence);
  }

  @Override
  public void trialLogged(Trial trial) {}

  @Override
  public void added(Addition addition) {
    added.add(addition);
  }

  @Override
  public void notAdded(Addition addition, String why) {
    notAdded.add(why);
  }
}

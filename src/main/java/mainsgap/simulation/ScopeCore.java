package mainsgap.simulation;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.jspecify.annotations.Nullable;

/**
 * The acquisition of a simulated scope, whatever dialect it speaks. Simulated time runs {@link
 * #ACCELERATION} times faster than the clock, and jumps to a movement of the mains switch, so what
 * a record holds depends on the seed and never on the clock. All state is under the monitor of the
 * {@link PowerSide}; nothing happens between two calls that the second one could not find out.
 */
final class ScopeCore {
  static final double ACCELERATION = 10;

  /** Records from here on are meant to catch an event, shorter ones to look. */
  static final double LOOK_LIMIT_SECONDS = 1;

  /** So long the rest of a forced record takes once the event is in it. */
  private static final Duration AFTER_EVENT = Duration.ofMillis(20);

  private static final Duration AUTONOMOUS_DELAY = Duration.ofMillis(150);

  /** A hand that sees nothing come of its opening gives up and closes again. */
  private static final Duration AUTONOMOUS_PATIENCE = Duration.ofMillis(1500);

  /** Finer steps than this add nothing to a watch over tens of milliseconds. */
  private static final double FINEST_WATCH_SECONDS = 1e-6;

  /** How long an instrument that is slow to tell says that it is stopped. */
  private static final Duration LATE_STATE = Duration.ofMillis(60);

  /** Captures of a bench at rest lie this far apart. */
  private static final double REST_STRIDE_SECONDS = 0.73;

  private final PowerSide power;
  private final Clock clock;
  private final SimulatedBenchSettings settings;

  private Stage stage = Stage.IDLE;
  private @Nullable RecordPlan plan;
  private @Nullable ScopeRecord record;
  private Deadline stageEnd;
  private Deadline shownFrom;
  private boolean stuck;
  private boolean heldEvent;
  private int restCaptures;
  private @Nullable Deadline autonomousMove;

  /** Where an acquisition stands. */
  enum Stage {
    IDLE,
    FILLING,
    WATCHING,
    RECORDING,
    COMPLETE
  }

  ScopeCore(PowerSide power, Clock clock, SimulatedBenchSettings settings) {
    this.power = power;
    this.clock = clock;
    this.settings = settings;
    this.stageEnd = Deadline.after(Duration.ZERO, clock);
    this.shownFrom = stageEnd;
    power.watch(this::moved);
  }

  /** Starts an acquisition; one that runs is given up. */
  void arm(RecordPlan newPlan, ScopeFault fault) {
    synchronized (power) {
      stage = Stage.IDLE;
      closeAutonomously();
      plan = newPlan;
      record = null;
      heldEvent = false;
      boolean catching = isCatching(newPlan);
      shownFrom =
          Deadline.after(
              settings.scope().quirks().contains(ScopeQuirk.LATE_FIRST_STATE)
                  ? LATE_STATE
                  : Duration.ZERO,
              clock);
      stuck = catching && fault == ScopeFault.NEVER_TRIGGERS;
      autonomousMove =
          settings.autonomous() && catching ? Deadline.after(AUTONOMOUS_DELAY, clock) : null;
      if (stuck) {
        stage = Stage.WATCHING;
      } else if (newPlan.trigger() == null) {
        beginForced();
      } else {
        enter(Stage.FILLING, newPlan.preTriggerSeconds());
      }
    }
  }

  /** Forces the trigger of an acquisition that waits. */
  void force() {
    synchronized (power) {
      Stage at = stage();
      if (!stuck && (at == Stage.FILLING || at == Stage.WATCHING)) {
        beginForced();
      }
    }
  }

  /** Gives up what runs; a finished record stays. */
  void stop() {
    synchronized (power) {
      if (stage() != Stage.COMPLETE) {
        stage = Stage.IDLE;
      }
      closeAutonomously();
    }
  }

  /** Where the acquisition stands now. */
  Stage stage() {
    synchronized (power) {
      moveAutonomously();
      if (stage == Stage.FILLING && stageEnd.hasPassed()) {
        stage = Stage.WATCHING;
        watchRest();
      }
      if (stage == Stage.RECORDING && stageEnd.hasPassed()) {
        complete();
      }
      return stage;
    }
  }

  /** Where the acquisition stands by what the instrument says. */
  Stage shownStage() {
    synchronized (power) {
      Stage at = stage();
      return shownFrom.hasPassed() ? at : Stage.IDLE;
    }
  }

  /** The finished record, where there is one. */
  Optional<ScopeRecord> record() {
    synchronized (power) {
      return stage() == Stage.COMPLETE ? Optional.ofNullable(record) : Optional.empty();
    }
  }

  /** Whether an acquisition that needs no trigger still runs. */
  boolean isSweeping() {
    return stage() == Stage.RECORDING;
  }

  /** What hand and seed make of a record that runs, or of a watch. */
  private void moved(Episode episode) {
    Stage at = stage;
    restCaptures = 0;
    if (plan == null || stuck) {
      return;
    }
    if (at == Stage.RECORDING && record == null) {
      double place =
          plan.firstSampleSeconds() + episode.placeInForcedRecord() * plan.durationSeconds();
      hold(episode, -place, plan);
      stageEnd = Deadline.after(AFTER_EVENT, clock);
    } else if (at == Stage.WATCHING || at == Stage.FILLING) {
      watchEvent(episode, plan, at == Stage.WATCHING || stageEnd.hasPassed());
    }
  }

  private void watchEvent(Episode episode, RecordPlan armed, boolean watchedBefore) {
    Trigger trigger = armed.trigger();
    if (trigger == null) {
      return;
    }
    // a watch that has gone on for long has lately seen its crossings; one that begins sees none
    double lead = 0.1 + trigger.memorySeconds();
    double from = watchedBefore ? -lead : stageEnd.remaining().toNanos() * 1e-9 * ACCELERATION;
    double to = Math.max(from, episode.settledSeconds()) + lead;
    firing(episode, trigger, armed, from, to)
        .ifPresent(
            at -> {
              hold(episode, at + sampleClock(episode) * armed.intervalSeconds(), armed);
              enter(Stage.RECORDING, armed.postTriggerSeconds());
            });
  }

  /** The sample clock runs free of the trigger: where in an interval the trigger falls. */
  private static double sampleClock(Episode episode) {
    return new SplittableRandom(~episode.noiseSeed()).nextDouble();
  }

  /** A watch that begins on a bench at rest: a level out of reach or a short time fires at once. */
  private void watchRest() {
    RecordPlan armed = plan;
    Trigger trigger = armed == null ? null : armed.trigger();
    if (armed == null || trigger == null || stuck) {
      return;
    }
    Episode rest = power.now();
    double from = nextRestSeconds(rest);
    double to = from + 0.1 + trigger.memorySeconds();
    firing(rest, trigger, armed, from, to)
        .ifPresent(
            at -> {
              record = recordOf(rest, at, armed, restCaptures);
              enter(Stage.RECORDING, armed.postTriggerSeconds());
            });
  }

  private OptionalDouble firing(
      Episode episode, Trigger trigger, RecordPlan armed, double from, double to) {
    double step = Math.max(FINEST_WATCH_SECONDS, armed.intervalSeconds());
    Voltage shown = ScopeRecord.shownOf(episode, trigger.channel(), armed);
    double noiseVolts = noiseVolts(trigger.channel(), armed);
    long seed = ~episode.noiseSeed();
    return trigger.firesAt(
        at -> shown.voltsAt(at) + noiseVolts * Noise.at(seed, Math.round(at / step)),
        from,
        to,
        step);
  }

  private static double noiseVolts(int channel, RecordPlan armed) {
    return channel == ScopeRecord.EXTERNAL
        ? 0
        : ScopeRecord.NOISE_SHARE * armed.ranges().get(channel - 1).spanVolts();
  }

  private void beginForced() {
    if (plan != null) {
      enter(Stage.RECORDING, plan.durationSeconds());
    }
  }

  private void complete() {
    if (record == null && plan != null) {
      Episode rest = power.now();
      double first = nextRestSeconds(rest);
      record = recordOf(rest, first - plan.firstSampleSeconds(), plan, restCaptures);
    }
    stage = Stage.COMPLETE;
    if (heldEvent) {
      closeAutonomously();
    }
  }

  private void hold(Episode episode, double zeroSeconds, RecordPlan armed) {
    record = recordOf(episode, zeroSeconds, armed, 0);
    heldEvent = true;
    TrialTruth truth = episode.truth();
    if (truth != null) {
      power.caught(truth.seenFrom(zeroSeconds));
    }
  }

  private ScopeRecord recordOf(Episode episode, double zero, RecordPlan armed, int capture) {
    long noiseSeed = episode.noiseSeed() + 16L * capture;
    return new ScopeRecord(episode, zero, armed, settings.scope().converterBits(), noiseSeed);
  }

  private double nextRestSeconds(Episode rest) {
    restCaptures++;
    return rest.settledSeconds() + REST_STRIDE_SECONDS * restCaptures;
  }

  private void moveAutonomously() {
    if (power.isCommanded() || autonomousMove == null || !autonomousMove.hasPassed()) {
      return;
    }
    if (!power.isMainsClosed()) {
      closeAutonomously();
    } else if (stage == Stage.WATCHING || (stage == Stage.RECORDING && record == null)) {
      autonomousMove = Deadline.after(AUTONOMOUS_PATIENCE, clock);
      power.openMains();
    }
  }

  private void closeAutonomously() {
    if (settings.autonomous() && !power.isCommanded()) {
      autonomousMove = null;
      power.closeMains();
    }
  }

  private static boolean isCatching(RecordPlan plan) {
    return (plan.trigger() != null && plan.preTriggerSeconds() > 0)
        || plan.durationSeconds() >= LOOK_LIMIT_SECONDS;
  }

  private void enter(Stage next, double simulatedSeconds) {
    stage = next;
    stageEnd =
        Deadline.after(Duration.ofNanos(Math.round(simulatedSeconds / ACCELERATION * 1e9)), clock);
  }
}

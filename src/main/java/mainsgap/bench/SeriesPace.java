package mainsgap.bench;

import java.time.Duration;
import mainsgap.arming.Pace;
import mainsgap.scope.CaptureRequest;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/** The limits of a series' waits, from the request, its plan, the rig file and the defaults. */
final class SeriesPace {
  /** The simulated hand is quick, and the simulated unit needs no rest. */
  private static final Pace SIMULATED =
      new Pace(
          Duration.ofSeconds(20),
          Duration.ZERO,
          Duration.ZERO,
          Duration.ofSeconds(10),
          Duration.ofSeconds(10),
          Duration.ofMillis(5),
          5);

  private SeriesPace() {}

  /** What was asked for goes before the plan, the plan before the rig file and the defaults. */
  static Pace of(SeriesRequest request, @Nullable RigFile rig) {
    boolean real = request.instrument() instanceof InstrumentChoice.Real;
    Pace pace = real ? Pace.AT_A_BENCH : SIMULATED;
    Duration settle = pace.settle();
    if (rig != null && rig.settleSeconds() != null) {
      settle = Duration.ofMillis(Math.round(1e3 * rig.settleSeconds()));
    }
    SeriesPlan plan = request.plan();
    Duration triggerWait =
        real && request.event() == Event.RESTORATION
            ? Pace.TRIGGER_WAIT_FOR_LOSS.plusMillis(
                Math.round(1e3 * longestCheckSeconds(request, rig)))
            : pace.triggerWait();
    try {
      return new Pace(
          first(request.triggerWait(), plan.triggerWait(), triggerWait),
          first(request.settle(), plan.settle(), settle),
          first(null, plan.pause(), pace.pause()),
          pace.recoveryWait(),
          pace.consentWait(),
          pace.poll(),
          first(request.maxRepeats(), plan.repeats(), pace.maxRepeats()));
    } catch (IllegalArgumentException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  /** How long the unit may check a mains that is back, before it gives over. */
  static double longestCheckSeconds(SeriesRequest request, @Nullable RigFile rig) {
    Double declared = rig == null ? null : rig.longestCheckSeconds();
    return request.instrument() instanceof InstrumentChoice.Simulated
        ? SimulatedSignals.LONGEST_CHECK_SECONDS
        : declared == null ? CaptureRequest.LONGEST_CHECK_SECONDS : declared;
  }

  private static <T> T first(@Nullable T asked, @Nullable T planned, T otherwise) {
    if (asked != null) {
      return asked;
    }
    return planned == null ? otherwise : planned;
  }
}

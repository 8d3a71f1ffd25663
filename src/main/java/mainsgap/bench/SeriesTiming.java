package mainsgap.bench;

import java.util.List;
import java.util.SplittableRandom;
import mainsgap.arming.SwitchTiming;
import org.jspecify.annotations.Nullable;

/** Where on the wave a commanded mains switch opens, as the plan asks and the switch can. */
final class SeriesTiming {
  private SeriesTiming() {}

  /**
   * The timing.
   *
   * @param commanded the switch that the program moves; null where a hand does
   * @throws BenchException with a sentence where the switch cannot do what the plan asks for
   */
  static SwitchTiming of(SeriesRequest request, @Nullable RigSwitch commanded) {
    SeriesPlan plan = request.plan();
    boolean asksForTiming = plan.randomCycles() != null || !plan.anglesDegrees().isEmpty();
    if (commanded == null) {
      if (asksForTiming) {
        throw new BenchException(
            "the plan says when the mains switch opens on the wave, but a hand moves it: the angle"
                + " is measured, not chosen; take [switching] out of the plan, or name a commanded"
                + " switch in the rig file");
      }
      return SwitchTiming.BY_HAND;
    }
    if (!plan.anglesDegrees().isEmpty()) {
      if (!commanded.choosesAngle()) {
        throw new BenchException(
            "the plan fixes the angles at which mains opens, but this mains switch opens when it"
                + " can: the angle is measured, not chosen; use random-delay-cycles, or an AC source"
                + " or a turn-off electronic switch whose data have a command with {angle}");
      }
      return new SwitchTiming(0, plan.anglesDegrees(), 0);
    }
    Integer cycles = plan.randomCycles();
    return new SwitchTiming(cycles == null ? 1 : cycles, List.of(), seed(request));
  }

  /** What is drawn here is kept with the session. */
  private static long seed(SeriesRequest request) {
    Integer planned = request.plan().randomSeed();
    if (planned != null) {
      return planned;
    }
    return request.instrument() instanceof InstrumentChoice.Simulated simulated
        ? simulated.seed()
        : new SplittableRandom().nextInt(SeriesPlan.HIGHEST_SEED);
  }
}

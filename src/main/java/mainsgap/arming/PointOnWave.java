package mainsgap.arming;

import java.time.Duration;
import java.util.Optional;
import java.util.SplittableRandom;
import mainsgap.transfer.outcome.MeasuringTask;

/** Chooses, opening by opening, where on the wave a commanded switch opens. */
final class PointOnWave {
  private final SwitchTiming timing;
  private final double spanSeconds;
  private final SplittableRandom random;
  private int openings;

  PointOnWave(SwitchTiming timing, MeasuringTask task) {
    this.timing = timing;
    this.spanSeconds = timing.randomCycles() / task.nominalFrequencyHertz();
    this.random = new SplittableRandom(timing.seed());
  }

  /** The angle of the next opening; empty where it is left to chance. */
  Optional<Double> nextAngleDegrees() {
    var angles = timing.anglesDegrees();
    return angles.isEmpty()
        ? Optional.empty()
        : Optional.of(angles.get(openings++ % angles.size()));
  }

  /** The delay before the next opening, even over whole cycles. */
  Duration nextDelay() {
    return Sentences.seconds(spanSeconds * random.nextDouble());
  }
}

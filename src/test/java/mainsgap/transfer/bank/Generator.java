package mainsgap.transfer.bank;

import java.util.function.Consumer;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.MeasuringTask;

/** Turns a seed and a kind's settings into a capture and its truth. */
final class Generator {
  private static final long SEEDS_APART = 7919;

  private Generator() {}

  static KnownCapture capture(long seed, CaptureKind kind, Consumer<Rig> settings) {
    Rig rig = new Rig(seed * SEEDS_APART + kind.name().hashCode());
    settings.accept(rig);
    return capture(rig);
  }

  static KnownCapture capture(Rig rig) {
    LoadVoltage load = new LoadVoltage(rig);
    return new KnownCapture(
        new Recorder(rig).record(load),
        new MeasuringTask(Event.LOSS, rig.askedVolts, rig.askedHertz),
        new Truth(
            rig.lossSeconds(),
            rig.returnSeconds(),
            rig.secondBreakSeconds > 0 ? 1 : 0,
            rig.returns && rig.left == Rig.Left.NOTHING && load.isAtRestAtReturn(),
            1e6 * rig.intervalSeconds(),
            rig.noiseShare),
        () -> LocationBound.seconds(rig));
  }
}

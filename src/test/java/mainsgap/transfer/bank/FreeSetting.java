package mainsgap.transfer.bank;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ObjDoubleConsumer;
import java.util.function.ToDoubleFunction;

/** A setting of the rig that a measurement has to find beside the instants. */
@SuppressWarnings("ImmutableEnumChecker") // its functions hold no state
enum FreeSetting {
  LEFT_SHARE(rig -> rig.leftShare, (rig, value) -> rig.leftShare = value),
  LEFT_HERTZ(rig -> rig.leftHertz, (rig, value) -> rig.leftHertz = value),
  LEFT_DEGREES(rig -> rig.leftDegrees, (rig, value) -> rig.leftDegrees = value),
  LEFT_DECAY(rig -> rig.leftDecaySeconds, (rig, value) -> rig.leftDecaySeconds = value),
  START(rig -> rig.startSeconds, (rig, value) -> rig.startSeconds = value),
  RING_SHARE(rig -> rig.ringShare, (rig, value) -> rig.ringShare = value),
  RING_HERTZ(rig -> rig.ringHertz, (rig, value) -> rig.ringHertz = value),
  RING_DEGREES(rig -> rig.ringDegrees, (rig, value) -> rig.ringDegrees = value),
  RING_DECAY(rig -> rig.ringDecaySeconds, (rig, value) -> rig.ringDecaySeconds = value),
  LOW_PASS(rig -> rig.lowPassSeconds, (rig, value) -> rig.lowPassSeconds = value);

  private static final double STEP_SHARE = 1e-4;

  /** Of degrees that start at 0. */
  private static final double LEAST_STEP_DEGREES = 0.01;

  private final ToDoubleFunction<Rig> value;

  private final ObjDoubleConsumer<Rig> change;

  FreeSetting(ToDoubleFunction<Rig> value, ObjDoubleConsumer<Rig> change) {
    this.value = value;
    this.change = change;
  }

  /** How the samples move with each setting that the rig uses; the rig is left as it was. */
  static List<double[]> derivatives(Rig rig, SampledLoad load) {
    List<double[]> derivatives = new ArrayList<>();
    for (FreeSetting setting : values()) {
      double usual = setting.value.applyAsDouble(rig);
      boolean angle = setting == LEFT_DEGREES || setting == RING_DEGREES;
      double step = angle ? LEAST_STEP_DEGREES : STEP_SHARE * usual;
      if (step != 0) {
        setting.change.accept(rig, usual + step);
        derivatives.add(load.difference(new LoadVoltage(rig)));
        setting.change.accept(rig, usual);
      }
    }
    return derivatives;
  }
}

package mainsgap.transfer.event;

import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * A recording whose search goes on behind what was no event.
 *
 * @param recording as if the disturbance had not been: without it the cycles before and after it
 *     tell the same supply, and no later cycle differs from a disturbed one
 * @param from the sample from which the next departure is looked for
 */
public record PassedOver(Recording recording, int from) {

  /**
   * Whether a departure from the cycle before it is none from the supply: a supply whose frequency
   * has changed differs from cycle to cycle, and goes on.
   */
  public static boolean isNoDeparture(Recording recording, Supply before, int departure) {
    return new Disturbance(recording, before).isNone(departure);
  }

  /** Behind a pulse, a notch or a sag that begins at a departure; null where it is none of them. */
  public static @Nullable PassedOver disturbance(
      Recording recording, Supply before, int departure) {
    Disturbance.Stretch pulse = new Disturbance(recording, before).at(departure);
    if (pulse != null) {
      return bridged(recording, before, pulse);
    }
    Sag.Stretch sag = new Sag(recording, before).at(departure);
    return sag == null ? null : new PassedOver(lifted(recording, before, sag), sag.to());
  }

  /**
   * Behind what was measured and is no event; null where the supply before does not go on within
   * {@code longest} samples.
   */
  public static @Nullable PassedOver noEvent(
      Recording recording, Supply before, int departure, int longest) {
    Disturbance.Stretch stretch = new Disturbance(recording, before).ofNoEvent(departure, longest);
    return stretch == null ? null : bridged(recording, before, stretch);
  }

  /** Without what disturbs the supply shortly before a departure; the same where nothing does. */
  public static Recording cleared(Recording recording, Supply before, int departure) {
    Recording cleared = recording;
    for (Disturbance.Stretch one : new Disturbance(recording, before).slightBefore(departure)) {
      cleared = bridged(cleared, before, one).recording();
    }
    return cleared;
  }

  /** Behind a stretch that is laid over with the supply. */
  public static PassedOver bridged(
      Recording recording, Supply before, Disturbance.Stretch stretch) {
    double[] volts = recording.volts().clone();
    double[] supplied = before.voltsIn(recording.time(), stretch.from(), stretch.to());
    System.arraycopy(supplied, 0, volts, stretch.from(), supplied.length);
    return new PassedOver(recording.with(volts), stretch.to());
  }

  /** The sagging samples as high as their supply was before; a dead load stays dead. */
  private static Recording lifted(Recording recording, Supply before, Sag.Stretch sag) {
    double[] volts = recording.volts().clone();
    double offset = before.harmonics().offsetVolts();
    double[] supplied = before.voltsIn(recording.time(), sag.from(), sag.to());
    for (int i = sag.from(); i < sag.to(); i++) {
      double whole = supplied[i - sag.from()] - offset;
      double found = volts[i] - offset;
      if (Math.abs(found - sag.share() * whole) < Math.abs(found - whole)) {
        volts[i] = offset + found / sag.share();
      }
    }
    return recording.with(volts);
  }
}

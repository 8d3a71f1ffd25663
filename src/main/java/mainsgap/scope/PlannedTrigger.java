package mainsgap.scope;

import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/**
 * What the instrument waits for.
 *
 * @param method the kind of trigger
 * @param source the role whose channel is watched; null for the external trigger input, and only
 *     then
 * @param levelVolts in volts at the tip; of a window the upper level, the lower one is its negative
 * @param timeSeconds how long the signal must have been quiet; of an edge, how late the signal is
 * @param slope the way of an edge; of no meaning where quiet is awaited
 */
public record PlannedTrigger(
    CatchMethod method,
    @Nullable ChannelRole source,
    double levelVolts,
    double timeSeconds,
    Slope slope) {

  /** Checks that the kind and the source go together. */
  public PlannedTrigger {
    if (!method.isTriggered()) {
      throw new IllegalArgumentException(method.words() + " has no trigger");
    }
    if ((source == null) != (method == CatchMethod.EXTERNAL_TRIGGER)) {
      throw new IllegalArgumentException(method.words() + " has the source " + source);
    }
    if (!(timeSeconds >= 0) || Double.isInfinite(timeSeconds)) {
      throw new IllegalArgumentException("a trigger's time is from 0 s up, found " + timeSeconds);
    }
  }

  /** One that awaits quiet. */
  public static PlannedTrigger quiet(
      CatchMethod method, ChannelRole source, double levelVolts, double timeSeconds) {
    return new PlannedTrigger(method, source, levelVolts, timeSeconds, Slope.RISING);
  }
}

package mainsgap.desk.trace;

import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.PeriodicModel;

/**
 * A steady supply that was fitted, drawn as a broken line under the traces. It is left out where
 * its cycles lie so close that no line could be told.
 *
 * @param name what it is, in a few words for the legend, such as "mains, as fitted"
 * @param volts its volts at seconds from the zero of the picture
 * @param span where it is drawn
 * @param cycleSeconds the length of a cycle
 */
public record Curve(String name, DoubleUnaryOperator volts, TimeSpan span, double cycleSeconds) {

  /** Checks the cycle. */
  public Curve {
    if (!(cycleSeconds > 0)) {
      throw new IllegalArgumentException("a cycle lasts longer than 0 s, found " + cycleSeconds);
    }
  }

  /**
   * A fitted supply.
   *
   * @param zeroSeconds where the zero of the picture lies on the axis of the fit
   * @param span where it is drawn, from the zero of the picture
   */
  public static Curve of(String name, PeriodicModel model, double zeroSeconds, TimeSpan span) {
    return new Curve(
        name,
        seconds -> model.voltsAt(seconds + zeroSeconds),
        span,
        1 / Math.abs(model.frequencyHertz()));
  }
}

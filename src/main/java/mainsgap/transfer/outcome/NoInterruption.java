package mainsgap.transfer.outcome;

import mainsgap.signal.Event;

/**
 * Mains was lost and the load saw no interruption.
 *
 * @param event the change of supply that took place
 * @param shortestVisibleMillis the shortest gap that this capture would have shown
 * @param proof one sentence: how this capture shows that mains was lost
 * @param eventSeconds when the supply changed, on the capture's own time axis
 * @param pointOnWaveDegrees the angle of the supply before at that instant, 0 to 360
 * @param supplies what the fitted supplies say
 * @param others what the channels beside the output tell
 */
public record NoInterruption(
    Event event,
    double shortestVisibleMillis,
    String proof,
    double eventSeconds,
    double pointOnWaveDegrees,
    Supplies supplies,
    OtherChannels others)
    implements Outcome {

  /** Nothing was watched but the output. */
  public NoInterruption(
      Event event,
      double shortestVisibleMillis,
      String proof,
      double eventSeconds,
      double pointOnWaveDegrees,
      Supplies supplies) {
    this(
        event,
        shortestVisibleMillis,
        proof,
        eventSeconds,
        pointOnWaveDegrees,
        supplies,
        OtherChannels.NONE);
  }

  /** The same with what the other channels tell. */
  public NoInterruption with(OtherChannels found) {
    return new NoInterruption(
        event, shortestVisibleMillis, proof, eventSeconds, pointOnWaveDegrees, supplies, found);
  }

  @Override
  public Kind kind() {
    return Kind.NO_INTERRUPTION;
  }

  @Override
  public String sentence() {
    return String.format(
        java.util.Locale.ROOT, "no interruption longer than %.3f ms", shortestVisibleMillis);
  }
}

package mainsgap.bench;

import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.EventSignal;
import mainsgap.scope.EventSignal.Follows;
import mainsgap.signal.Event;

/** The small signals of the simulated bench, as its rig file would say them. */
final class SimulatedSignals {
  /** The simulated units trust a mains that is back after about a second. */
  static final double LONGEST_CHECK_SECONDS = 2;

  private static final int MAINS_PRESENT_CHANNEL = 3;
  private static final int CONTACT_CHANNEL = 4;
  private static final EventSignal MAINS_PRESENT =
      new EventSignal(Follows.MAINS, 0, 5, true, 40e-3);
  private static final EventSignal CONTACT = new EventSignal(Follows.UNIT, 0, 5, true, 5e-3);

  private SimulatedSignals() {}

  /** The external input is always wired; a channel is, where an edge is wished for. */
  static RigSignals wiredFor(Event event, CatchWish wish) {
    if (wish != CatchWish.EDGE_TRIGGER) {
      return new RigSignals(null, null, MAINS_PRESENT);
    }
    return switch (event) {
      case LOSS ->
          new RigSignals(Input.ofSupply(MAINS_PRESENT_CHANNEL, 1), MAINS_PRESENT, MAINS_PRESENT);
      case RESTORATION ->
          new RigSignals(Input.ofSupply(CONTACT_CHANNEL, 1), CONTACT, MAINS_PRESENT);
    };
  }
}

package mainsgap.simulation;

import java.util.ArrayList;
import java.util.List;

/** The voltage of a point of the circuit that is fed, left open and fed again. Immutable. */
final class NodeVoltage implements Voltage {
  private final double[] startSeconds;
  private final Voltage[] pieces;

  private NodeVoltage(double[] startSeconds, Voltage[] pieces) {
    this.startSeconds = startSeconds;
    this.pieces = pieces;
  }

  @Override
  public double voltsAt(double seconds) {
    int piece = pieces.length - 1;
    while (piece > 0 && seconds < startSeconds[piece]) {
      piece--;
    }
    return pieces[piece].voltsAt(seconds);
  }

  /**
   * How an output filter rings when it is put on the load.
   *
   * @param share the part of the step that rings
   * @param hertz its frequency
   * @param decaySeconds its time constant
   */
  record Ring(double share, double hertz, double decaySeconds) {
    static final Ring NONE = new Ring(0, 1, 1);
  }

  /** Puts the pieces together in the order of time. */
  static final class Pieces {
    private final List<Double> starts = new ArrayList<>();
    private final List<Voltage> pieces = new ArrayList<>();

    Pieces(Voltage atFirst) {
      add(Double.NEGATIVE_INFINITY, atFirst);
    }

    /** From {@code seconds} on the node floats: what is left decays, and pickup remains. */
    Pieces openAt(double seconds, double decaySeconds, Voltage pickup) {
      double leftVolts = voltsNowAt(seconds) - pickup.voltsAt(seconds);
      return add(
          seconds, at -> leftVolts * Math.exp(-(at - seconds) / decaySeconds) + pickup.voltsAt(at));
    }

    /** From {@code seconds} on {@code supply} feeds the node. */
    Pieces fedAt(double seconds, Supply supply, Ring ring) {
      double ringVolts = ring.share() * (supply.voltsAt(seconds) - voltsNowAt(seconds));
      if (ringVolts == 0) {
        return add(seconds, supply);
      }
      double endSeconds = seconds + 15 * ring.decaySeconds();
      return add(
          seconds,
          at -> {
            double volts = supply.voltsAt(at);
            if (at > endSeconds) {
              return volts;
            }
            double since = at - seconds;
            return volts
                - ringVolts
                    * Math.exp(-since / ring.decaySeconds())
                    * Math.cos(2 * Math.PI * ring.hertz() * since);
          });
    }

    NodeVoltage build() {
      return new NodeVoltage(
          starts.stream().mapToDouble(Double::doubleValue).toArray(),
          pieces.toArray(Voltage[]::new));
    }

    private double voltsNowAt(double seconds) {
      return pieces.get(pieces.size() - 1).voltsAt(seconds);
    }

    private Pieces add(double seconds, Voltage piece) {
      starts.add(seconds);
      pieces.add(piece);
      return this;
    }
  }
}

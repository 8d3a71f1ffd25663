package mainsgap.transfer.bank;

import java.util.ArrayList;
import java.util.List;

/**
 * How well the transfer time of a capture can be told at best.
 *
 * <p>Let {@code v(t; x, q)} be the load voltage with an instant at {@code x} and with settings
 * {@code q} that a measurement has to find too (how fast a residue decays, how a ring swings). Two
 * instants {@code x} and {@code x + h} are told apart by the energy {@code E(h) = min over dq of
 * sum (v(x + h) - v(x) - J dq)^2 / s^2}, {@code s} one sample's noise and quantisation, {@code J}
 * the derivatives by {@code q}. Where {@code v} moves smoothly with {@code x}, {@code E = I h^2}
 * and {@code E(h) = 1} is the Cramér-Rao bound. At a kink E grows with the cube of h, and the error
 * of the best estimator is a little larger: {@code E(h) = 1.5} gives the 33.7 µs that a Monte-Carlo
 * run gives for a loss at 0 degrees (230 V, 50 Hz, 100 kS/s, s = 3 V, maximum likelihood). Within a
 * rest of the output E is 0: the bound is then the way to the rest's end. The bound of the transfer
 * time is the root of the sum of squares of both instants' bounds.
 */
final class LocationBound {
  private static final double TOLD_APART = 1.5;

  /** No instant is searched further away than this, nor past the middle of the gap. */
  private static final double FURTHEST_SECONDS = 10e-3;

  private static final double GROWTH = 1.3;
  private static final int HALVINGS = 5;

  private final Rig rig;
  private final SampledLoad load;

  /** Orthonormal. */
  private final List<double[]> directions;

  private final double spreadVolts;
  private final boolean ofLoss;

  private LocationBound(Rig rig, boolean ofLoss) {
    this.rig = rig;
    this.ofLoss = ofLoss;
    this.load = new SampledLoad(rig, ofLoss ? rig.lossSeconds() : rig.returnSeconds());
    this.spreadVolts = spreadVolts(rig);
    this.directions = orthonormal(FreeSetting.derivatives(rig, load));
  }

  /** The bound of the transfer time in seconds. */
  static double seconds(Rig rig) {
    return Math.hypot(lossSeconds(rig), new LocationBound(rig, false).bound());
  }

  /** The bound of the loss in seconds. */
  static double lossSeconds(Rig rig) {
    return new LocationBound(rig, true).bound();
  }

  private static double spreadVolts(Rig rig) {
    double noise = rig.noiseShare * rig.peakVolts();
    double ripple = rig.rippleShare * rig.peakVolts() / Math.sqrt(2);
    double quantisation = rig.voltsPerCode() / Math.sqrt(12);
    return Math.sqrt(noise * noise + ripple * ripple + quantisation * quantisation);
  }

  /** The larger of the ways to both sides. */
  private double bound() {
    return Math.max(reach(1), reach(-1));
  }

  private double reach(int side) {
    double furthest = Math.min(FURTHEST_SECONDS, rig.gapSeconds / 2);
    double low = 0;
    double high = rig.intervalSeconds() / 2;
    while (energy(side * high) < TOLD_APART) {
      low = high;
      high *= GROWTH;
      if (high > furthest) {
        return furthest;
      }
    }
    for (int k = 0; k < HALVINGS; k++) {
      double middle = (low + high) / 2;
      if (energy(side * middle) < TOLD_APART) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private double energy(double shiftSeconds) {
    double[] difference =
        load.difference(
            new LoadVoltage(
                rig,
                rig.lossSeconds() + (ofLoss ? shiftSeconds : 0),
                rig.returnSeconds() + (ofLoss ? 0 : shiftSeconds)));
    directions.forEach(direction -> takeAway(difference, direction));
    return dot(difference, difference) / (spreadVolts * spreadVolts);
  }

  private static List<double[]> orthonormal(List<double[]> derivatives) {
    List<double[]> made = new ArrayList<>();
    for (double[] derivative : derivatives) {
      double before = dot(derivative, derivative);
      made.forEach(earlier -> takeAway(derivative, earlier));
      double square = dot(derivative, derivative);
      if (square > 1e-9 * before && square > 0) {
        double norm = Math.sqrt(square);
        for (int i = 0; i < derivative.length; i++) {
          derivative[i] /= norm;
        }
        made.add(derivative);
      }
    }
    return made;
  }

  private static void takeAway(double[] from, double[] direction) {
    double part = dot(from, direction);
    for (int i = 0; i < from.length; i++) {
      from[i] -= part * direction[i];
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}

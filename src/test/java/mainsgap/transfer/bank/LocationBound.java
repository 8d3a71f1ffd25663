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
 * the derivatives by {@code q}. Where {@code v} moves with {@code x} far away too, {@code E = I
 * h^2} and {@code E(h) = 1} is the Cramér-Rao bound; {@code E(h) = 1.5} is taken. Where only the
 * samples between both instants move, the bound is the scatter of the most likely instant: {@link
 * ChangePointLaw} has how far in E it lies off. That gives 39 µs for a loss at 0 degrees (230 V, 50
 * Hz, 100 kS/s, s = 3 V), where a Monte-Carlo run gives 33.7 µs and E grows with the cube of h, and
 * the 26 (s/D)^4 samples squared of a small step D, where E grows with h. Within a rest of the
 * output E is 0: the bound is then the way to the rest's end, or back to the loss. The bound of the
 * transfer time is the root of the sum of squares of both instants' bounds.
 */
final class LocationBound {
  private static final double TOLD_APART = 1.5;

  /** No instant is searched further away than this, nor, off a rest, past the middle of the gap. */
  private static final double FURTHEST_SECONDS = 10e-3;

  private static final double GROWTH = 1.3;
  private static final int HALVINGS = 5;

  /** Of the energy, so little lies elsewhere than between both instants. */
  private static final double ELSEWHERE_SHARE = 0.05;

  /** The search ends where the most likely instant lies further off less often than this. */
  private static final double NEVER = 1e-3;

  /** Of all errors, so few need not be told apart. */
  private static final double FEW = 0.1;

  private final Rig rig;
  private final SampledLoad load;

  /** Orthonormal. */
  private final List<double[]> directions;

  private final double spreadVolts;
  private final boolean ofLoss;

  /** A shift and the share of errors within it. */
  private record Place(double shift, double within) {}

  private LocationBound(Rig rig, boolean ofLoss) {
    this.rig = rig;
    this.ofLoss = ofLoss;
    this.load = new SampledLoad(rig, ofLoss ? rig.lossSeconds() : rig.returnSeconds());
    this.spreadVolts = spreadVolts(rig);
    this.directions = orthonormal(free());
  }

  /** The bound of the transfer time in seconds. */
  static double seconds(Rig rig) {
    return Math.hypot(lossSeconds(rig), new LocationBound(rig, false).bound());
  }

  /** The bound of the loss in seconds. */
  static double lossSeconds(Rig rig) {
    return new LocationBound(rig, true).bound();
  }

  /**
   * What a measurement has to find beside the instant. It cannot presume that what decays behind
   * the instant, by itself or in a probe that smooths, begins where the voltage was: an arc, or
   * what else hangs on the line, may have brought it elsewhere.
   */
  private List<double[]> free() {
    List<double[]> free = FreeSetting.derivatives(rig, load);
    if (ofLoss && rig.left == Rig.Left.DECAY) {
      free.add(load.decaying(rig.leftDecaySeconds, rig.returnSeconds()));
    }
    if (rig.lowPassSeconds > 0) {
      free.add(load.decaying(rig.lowPassSeconds, Double.POSITIVE_INFINITY));
    }
    return free;
  }

  private static double spreadVolts(Rig rig) {
    double noise = rig.noiseShare * rig.peakVolts();
    double ripple = rig.rippleShare * rig.peakVolts() / Math.sqrt(2);
    double quantisation = rig.voltsPerCode() / Math.sqrt(12);
    return Math.sqrt(noise * noise + ripple * ripple + quantisation * quantisation);
  }

  /** The larger of the ways to both sides, or the scatter over both. */
  private double bound() {
    double later = reach(1);
    double earlier = reach(-1);
    return isBetween(1, later) && isBetween(-1, earlier)
        ? Math.sqrt((meanSquare(1) + meanSquare(-1)) / 2)
        : Math.max(later, earlier);
  }

  private boolean isBetween(int side, double shiftSeconds) {
    double[] difference = difference(side * shiftSeconds);
    double all = dot(difference, difference);
    return load.squaresBeyond(difference, shiftSeconds) <= ELSEWHERE_SHARE * all;
  }

  /** Of the most likely instant's error, for those on one side. */
  private double meanSquare(int side) {
    double furthest = furthestSeconds(side);
    double shift = rig.intervalSeconds() / 2;
    double within = within(side * shift);
    double sum = within * shift * shift;
    while (1 - within > NEVER && shift * GROWTH < furthest) {
      double further = Math.max(within, within(side * shift * GROWTH));
      Place near = new Place(shift, within);
      sum += squares(side, near, new Place(shift * GROWTH, further), HALVINGS);
      shift *= GROWTH;
      within = further;
    }
    return sum + (1 - within) * shift * shift;
  }

  /** The part of errors between two shifts, in halves where many lie there. */
  private double squares(int side, Place near, Place far, int halvings) {
    double share = far.within - near.within;
    if (share < FEW || halvings == 0) {
      return share * (near.shift * near.shift + far.shift * far.shift) / 2;
    }
    double shift = (near.shift + far.shift) / 2;
    double within = Math.max(near.within, Math.min(far.within, within(side * shift)));
    Place middle = new Place(shift, within);
    return squares(side, near, middle, halvings - 1) + squares(side, middle, far, halvings - 1);
  }

  private double within(double shiftSeconds) {
    return ChangePointLaw.within(energy(shiftSeconds));
  }

  private double furthestSeconds(int side) {
    double middle = Math.min(FURTHEST_SECONDS, rig.gapSeconds / 2);
    boolean isInRest = !ofLoss && energy(side * middle) == 0;
    return isInRest && side > 0 ? FURTHEST_SECONDS : isInRest ? 2 * middle : middle;
  }

  private double reach(int side) {
    double furthest = furthestSeconds(side);
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
    double[] difference = difference(shiftSeconds);
    return dot(difference, difference) / (spreadVolts * spreadVolts);
  }

  private double[] difference(double shiftSeconds) {
    double[] difference =
        load.difference(
            new LoadVoltage(
                rig,
                rig.lossSeconds() + (ofLoss ? shiftSeconds : 0),
                rig.returnSeconds() + (ofLoss ? 0 : shiftSeconds)));
    directions.forEach(direction -> takeAway(difference, direction));
    return difference;
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

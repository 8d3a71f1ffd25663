package mainsgap.transfer.bank;

/**
 * The load voltage without noise at samples about an instant: each one near it, and ever fewer
 * further away, weighted by the root of how many each stands for, so that sums of squares are those
 * of all samples.
 */
final class SampledLoad {
  private static final int EACH_SAMPLE = 150;
  private static final double THINNING = 0.05;
  private static final double FURTHEST_SECONDS = 30e-3;

  private final Rig rig;
  private final double instant;
  private final double[] seconds;
  private final double[] weights;
  private final double[] volts;

  SampledLoad(Rig rig, double instant) {
    this.rig = rig;
    this.instant = instant;
    double interval = rig.intervalSeconds();
    int side = 0;
    for (int at = 0; at * interval < FURTHEST_SECONDS; at += stride(at)) {
      side++;
    }
    seconds = new double[2 * side];
    weights = new double[2 * side];
    int at = 0;
    for (int k = 0; k < side; k++) {
      double away = (at + 0.5 * stride(at)) * interval;
      seconds[side + k] = instant + away;
      seconds[side - 1 - k] = instant - away;
      double weight = Math.sqrt(stride(at));
      weights[side + k] = weight;
      weights[side - 1 - k] = weight;
      at += stride(at);
    }
    volts = probed(new LoadVoltage(rig));
  }

  private static int stride(int at) {
    return (int) Math.max(1, THINNING * (at - EACH_SAMPLE));
  }

  /** {@code other} minus the load voltage as the rig says, weighted. */
  double[] difference(LoadVoltage other) {
    double[] difference = probed(other);
    for (int i = 0; i < difference.length; i++) {
      difference[i] = weights[i] * (difference[i] - volts[i]);
    }
    return difference;
  }

  /** One volt at the instant that decays after it with a time constant up to an end, weighted. */
  double[] decaying(double timeConstantSeconds, double endSeconds) {
    double[] volts = new double[seconds.length];
    for (int i = 0; i < volts.length; i++) {
      double since = seconds[i] - instant;
      boolean isBehind = since >= 0 && seconds[i] < endSeconds;
      volts[i] = isBehind ? weights[i] * Math.exp(-since / timeConstantSeconds) : 0;
    }
    return volts;
  }

  /** The part of a sum of squares from samples further than this from the instant. */
  double squaresBeyond(double[] difference, double awaySeconds) {
    double squares = 0;
    for (int i = 0; i < difference.length; i++) {
      boolean isBeyond = Math.abs(seconds[i] - instant) > awaySeconds + rig.intervalSeconds();
      squares += isBeyond ? difference[i] * difference[i] : 0;
    }
    return squares;
  }

  private double[] probed(LoadVoltage load) {
    double[] probed = new double[seconds.length];
    double filtered = load.voltsAt(seconds[0]);
    for (int i = 0; i < probed.length; i++) {
      double now = load.voltsAt(seconds[i]);
      double keep =
          i == 0 || rig.lowPassSeconds == 0
              ? 0
              : Math.exp((seconds[i - 1] - seconds[i]) / rig.lowPassSeconds);
      filtered = keep * filtered + (1 - keep) * now;
      probed[i] = filtered;
    }
    return probed;
  }
}

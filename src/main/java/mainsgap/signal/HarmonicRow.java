package mainsgap.signal;

import java.util.Arrays;

/**
 * The voltages of a {@link HarmonicModel} at equidistant times, in blocks: the angles of a block
 * are turned from its first one, and the harmonics are summed up by Clenshaw's recurrence, from the
 * highest down, for the whole block at once. A processor takes several times at a step.
 */
final class HarmonicRow implements PeriodicModel.Row {
  /** Its arrays stay in the nearest cache. */
  private static final int BLOCK = 32;

  private final HarmonicModel model;
  private final double intervalSeconds;

  /** Of the fundamental's angle since the block's first time. */
  private final double[] turnedCos = new double[BLOCK];

  private final double[] turnedSin = new double[BLOCK];

  /** Of the fundamental's angle. */
  private final double[] cos = new double[BLOCK];

  private final double[] sin = new double[BLOCK];
  private final double[] twiceCos = new double[BLOCK];

  /** The last sum of the cosines and the one before, then the same of the sines. */
  private final double[][] sums = new double[4][BLOCK];

  HarmonicRow(HarmonicModel model, double intervalSeconds) {
    this.model = model;
    this.intervalSeconds = intervalSeconds;
    for (int i = 0; i < BLOCK; i++) {
      double angle = angle(i * intervalSeconds);
      turnedCos[i] = Math.cos(angle);
      turnedSin[i] = Math.sin(angle);
    }
  }

  private double angle(double seconds) {
    return 2 * Math.PI * model.frequencyHertz() * seconds;
  }

  @Override
  public void fill(double[] volts, int count, double firstSeconds) {
    for (int from = 0; from < count; from += BLOCK) {
      double seconds = firstSeconds + from * intervalSeconds - model.referenceSeconds();
      turn(angle(seconds));
      sumHarmonics();
      double offset = model.offsetVolts() + model.driftVoltsPerSecond() * seconds;
      double drift = model.driftVoltsPerSecond() * intervalSeconds;
      for (int i = 0; i < Math.min(BLOCK, count - from); i++) {
        double cosines = cos[i] * sums[0][i] - sums[1][i];
        volts[from + i] = offset + drift * i + cosines + sin[i] * sums[2][i];
      }
    }
  }

  private void turn(double firstAngle) {
    double firstCos = Math.cos(firstAngle);
    double firstSin = Math.sin(firstAngle);
    for (int i = 0; i < BLOCK; i++) {
      cos[i] = firstCos * turnedCos[i] - firstSin * turnedSin[i];
      sin[i] = firstSin * turnedCos[i] + firstCos * turnedSin[i];
      twiceCos[i] = 2 * cos[i];
    }
  }

  private void sumHarmonics() {
    for (double[] sum : sums) {
      Arrays.fill(sum, 0);
    }
    for (int k = model.orders() - 1; k >= 0; k--) {
      next(sums[1], sums[0], model.cosineVolts()[k]);
      next(sums[3], sums[2], model.sineVolts()[k]);
      swap(0);
      swap(2);
    }
  }

  /** {@code b_k = a_k + 2 cos b_(k+1) - b_(k+2)}, in the place of the last one. */
  private void next(double[] beforeLast, double[] last, double volts) {
    for (int i = 0; i < BLOCK; i++) {
      beforeLast[i] = volts + twiceCos[i] * last[i] - beforeLast[i];
    }
  }

  private void swap(int first) {
    double[] last = sums[first];
    sums[first] = sums[first + 1];
    sums[first + 1] = last;
  }
}

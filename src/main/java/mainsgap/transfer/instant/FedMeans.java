package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;

/**
 * The samples behind a make in short means, beside what the supply gives there: which of them it
 * explains, and which it does not.
 */
final class FedMeans {
  private static final double MEAN_SECONDS = 30e-6;

  /** A mean tells no more than this share of nominal peak: so well is a supply known. */
  private static final double KNOWN_SHARE_OF_PEAK = 0.0012;

  /** Noise of so many times the variance that the converter's step makes in it dithers it. */
  private static final double DITHERED = 2;

  /** A model that explains leaves so much at most, as a mean square in units of the noise. */
  private static final double MOST_LEFT = 2.5;

  /** A mean that lies so many deviations beside the supply is off it. */
  private static final double OFF_DEVIATIONS = 3;

  private final Recording recording;
  private final int start;
  private final int width;
  private final double[] volts;
  private final double[] deviations;
  private final double[] unexplained;
  private final double variance;

  /**
   * From a make up to a sample.
   *
   * @param make with the shape in which the supply arrives, as far as it was fitted
   * @param end exclusive
   * @param noiseVolts the standard deviation of one sample's noise
   */
  FedMeans(Recording recording, Supply supply, Edge make, int end, double noiseVolts) {
    this.recording = recording;
    this.start = (int) Math.ceil(recording.time().indexAt(make.seconds()));
    this.width = Math.max(1, recording.samplesIn(MEAN_SECONDS));
    int means = Math.max(0, (Math.min(end, recording.length()) - start) / width);
    this.volts = new double[means];
    this.deviations = new double[means];
    this.unexplained = new double[means];
    double[] suppliedVolts = supply.voltsIn(recording.time(), start, sampleAt(means));
    for (int k = 0; k < means; k++) {
      double fromArrival = 0;
      for (int i = sampleAt(k); i < sampleAt(k + 1); i++) {
        double seconds = recording.time().secondsAt(i);
        double supplied = suppliedVolts[i - start];
        double arrived = make.covers(seconds) ? make.laterVoltsAt(seconds) : supplied;
        volts[k] += recording.volts()[i] / width;
        deviations[k] += (recording.volts()[i] - supplied) / width;
        fromArrival += (recording.volts()[i] - arrived) / width;
      }
      unexplained[k] = Math.min(square(deviations[k]), square(fromArrival));
    }
    double known = KNOWN_SHARE_OF_PEAK * recording.peakVolts();
    this.variance = noiseVariance(supply, noiseVolts) + square(known);
  }

  /** Averaging lessens the converter's step only if it is dithered. */
  private double noiseVariance(Supply supply, double noiseVolts) {
    double independent = Math.max(1, supply.informationShare() * width);
    double ofStep = square(recording.codeVolts()) / 12;
    double ofSample = square(noiseVolts);
    return Math.max(ofSample / independent, ofSample < DITHERED * ofStep ? ofStep : 0);
  }

  int count() {
    return volts.length;
  }

  /** The whole means in a time. */
  int in(double seconds) {
    return recording.samplesIn(seconds) / width;
  }

  /** The mean that sample {@code index} falls into. */
  int at(int index) {
    return (index - start) / width;
  }

  /** The first sample of mean {@code index}. */
  int sampleAt(int index) {
    return start + index * width;
  }

  /** The time at {@code place} means from the make, between two samples where that is whole. */
  double secondsAt(double place) {
    return recording.time().secondsAt(start + place * width - 0.5);
  }

  double voltsAt(int index) {
    return volts[index];
  }

  /** The mean of a decay over one of these, as a share of what it is in the middle of it. */
  double averaged(double decaySeconds) {
    double half = 0.5 * width * recording.time().intervalSeconds() / decaySeconds;
    return width == 1 ? 1 : Math.sinh(half) / half;
  }

  /** A squared deviation in units of a mean's noise. */
  double inNoise(double deviationVolts) {
    return square(deviationVolts) / variance;
  }

  /** What supply or shape of the arrival leave of means, squared, in units of the noise. */
  double unexplained(int from, int to) {
    double squares = 0;
    for (int k = from; k < to; k++) {
      squares += unexplained[k] / variance;
    }
    return squares;
  }

  /** On which side of the supply a mean lies; 0 where it is not off it. */
  int side(int index) {
    boolean isOff = inNoise(deviations[index]) > square(OFF_DEVIATIONS);
    return isOff ? (int) Math.signum(deviations[index]) : 0;
  }

  /** Whether the supply explains means {@code from} (inclusive) to {@code to} (exclusive). */
  boolean isFed(int from, int to) {
    return to <= volts.length && squaresAbout(0, from, to) < MOST_LEFT * (to - from);
  }

  /** Whether so much is no more than what may be left of so many means. */
  static boolean isExplained(double squares, int means) {
    return squares < MOST_LEFT * means;
  }

  /** Of deviations about a voltage beside the supply, in units of the noise. */
  double squaresAbout(double besideVolts, int from, int to) {
    double squares = 0;
    for (int k = from; k < to; k++) {
      squares += inNoise(deviations[k] - besideVolts);
    }
    return squares;
  }

  /** The mean deviation of {@code fed} means before {@code open} and behind {@code make}. */
  double besideVolts(int open, int make, int fed) {
    double sum = 0;
    for (int k = 0; k < fed; k++) {
      sum += deviations[open - 1 - k] + deviations[make + 1 + k];
    }
    return sum / (2 * fed);
  }

  private static double square(double value) {
    return value * value;
  }
}

package mainsgap.signal;

/**
 * A fundamental with harmonics about an offset that may drift.
 *
 * @param referenceSeconds where all angles count from
 * @param frequencyHertz of the fundamental
 * @param offsetVolts the mean
 * @param driftVoltsPerSecond how the mean moves
 * @param cosineVolts the cosine amplitudes of harmonics 1, 2, 3 ...; owned
 * @param sineVolts the sine amplitudes of the same harmonics; owned
 * @param noiseVolts the standard deviation of the samples about the model
 * @param noiseCorrelation the correlation of neighbouring samples' deviations, -1 to 1
 */
@SuppressWarnings("ArrayRecordComponent") // owned, never handed out to change
public record HarmonicModel(
    double referenceSeconds,
    double frequencyHertz,
    double offsetVolts,
    double driftVoltsPerSecond,
    double[] cosineVolts,
    double[] sineVolts,
    double noiseVolts,
    double noiseCorrelation)
    implements PeriodicModel {

  @Override
  public double voltsAt(double seconds) {
    double angle = 2 * Math.PI * frequencyHertz * (seconds - referenceSeconds);
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    double cosK = 1;
    double sinK = 0;
    double volts = offsetVolts + driftVoltsPerSecond * (seconds - referenceSeconds);
    for (int k = 0; k < cosineVolts.length; k++) {
      double next = cosK * cos - sinK * sin;
      sinK = sinK * cos + cosK * sin;
      cosK = next;
      volts += cosineVolts[k] * cosK + sineVolts[k] * sinK;
    }
    return volts;
  }

  @Override
  public Row every(double intervalSeconds) {
    return new HarmonicRow(this, intervalSeconds);
  }

  @Override
  public double amplitudeVolts() {
    return amplitudeVolts(1);
  }

  /** The peak of harmonic {@code order}, 1 being the fundamental. */
  public double amplitudeVolts(int order) {
    return Math.hypot(cosineVolts[order - 1], sineVolts[order - 1]);
  }

  /** The number of harmonics fitted, the fundamental counted. */
  public int orders() {
    return cosineVolts.length;
  }

  @Override
  public double angleDegreesAt(double seconds) {
    double cycles = frequencyHertz * (seconds - referenceSeconds);
    double degrees = 360 * cycles + Math.toDegrees(Math.atan2(cosineVolts[0], sineVolts[0]));
    return degrees - 360 * Math.floor(degrees / 360);
  }

  /** The same with what else is known of the samples about it. */
  HarmonicModel withNoise(Deviations deviations) {
    return new HarmonicModel(
        referenceSeconds,
        frequencyHertz,
        offsetVolts,
        driftVoltsPerSecond,
        cosineVolts,
        sineVolts,
        deviations.standardDeviationVolts(),
        deviations.neighbourCorrelation());
  }

  @Override
  public double spreadVoltsAt(double seconds) {
    return noiseVolts;
  }
}

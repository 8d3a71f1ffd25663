package mainsgap.transfer.bank;

/**
 * A capture of any length: one forced record of 10 s in which mains is lost in the middle, an
 * ordinary bench otherwise. Its rate is what so many samples in 10 s need, at least 10 kS/s.
 */
public final class LongCapture {
  private static final double SECONDS = 10;
  private static final double LEAST_HERTZ = 10e3;

  private LongCapture() {}

  /** The capture of {@code samples}, the same each time. */
  public static KnownCapture of(int samples) {
    Rig rig = new Rig(1);
    rig.sampleRateHertz = Math.max(LEAST_HERTZ, samples / SECONDS);
    double seconds = samples / rig.sampleRateHertz;
    rig.cyclesBefore = seconds / 2 * rig.nominalHertz;
    rig.gapSeconds = 12e-3;
    rig.secondsAfter = seconds / 2 - rig.gapSeconds;
    rig.lossDegrees = 70;
    return Generator.capture(rig);
  }
}

package mainsgap.signal;

/** One tier of an envelope: the extents of equal, whole buckets of what lies below it. */
final class EnvelopeTier {
  private final double[] lowestVolts;
  private final double[] highestVolts;

  private EnvelopeTier(int length) {
    lowestVolts = new double[length];
    highestVolts = new double[length];
  }

  /** The lowest tier; samples that fill no whole bucket are left out. */
  static EnvelopeTier over(Waveform waveform, int samplesPerBucket) {
    EnvelopeTier tier = new EnvelopeTier(waveform.length() / samplesPerBucket);
    for (int bucket = 0; bucket < tier.length(); bucket++) {
      ExtentSoFar found = new ExtentSoFar();
      int end = (bucket + 1) * samplesPerBucket;
      for (int i = bucket * samplesPerBucket; i < end; i++) {
        double volts = waveform.voltsAt(i);
        found.add(volts, volts);
      }
      tier.set(bucket, found.extent());
    }
    return tier;
  }

  /** The tier above this one; buckets that fill no whole one of it are left out. */
  EnvelopeTier above(int bucketsPerBucket) {
    EnvelopeTier tier = new EnvelopeTier(length() / bucketsPerBucket);
    for (int bucket = 0; bucket < tier.length(); bucket++) {
      ExtentSoFar found = new ExtentSoFar();
      addTo(found, bucket * bucketsPerBucket, (bucket + 1) * bucketsPerBucket);
      tier.set(bucket, found.extent());
    }
    return tier;
  }

  int length() {
    return lowestVolts.length;
  }

  void addTo(ExtentSoFar found, int from, int to) {
    for (int i = from; i < to; i++) {
      found.add(lowestVolts[i], highestVolts[i]);
    }
  }

  private void set(int bucket, VoltExtent extent) {
    lowestVolts[bucket] = extent.lowestVolts();
    highestVolts[bucket] = extent.highestVolts();
  }
}

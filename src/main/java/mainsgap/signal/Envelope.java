package mainsgap.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Tells the lowest and highest voltage of any range of a waveform's samples without walking through
 * them: a pyramid whose tiers keep both for every {@value #FACTOR} of the tier below. What it tells
 * is exact, so that a spike of one sample is never lost. Immutable; it keeps the waveform, and
 * takes about half a byte a sample beside it.
 *
 * <p>Samples that are no number (NaN) count as not taken. Making one reads every sample once; a
 * query reads fewer than {@code 2 * FACTOR} values of each tier.
 */
public final class Envelope {
  /**
   * Ranges whose ends are multiples of it are told without a look at samples. Doubles at every 32nd
   * sample: exact in every format at the memory of floats at every 16th.
   */
  public static final int FACTOR = 32;

  private final Waveform waveform;
  private final List<EnvelopeTier> tiers;

  private Envelope(Waveform waveform, List<EnvelopeTier> tiers) {
    this.waveform = waveform;
    this.tiers = tiers;
  }

  /** Reads all samples of {@code waveform}. */
  public static Envelope of(Waveform waveform) {
    List<EnvelopeTier> tiers = new ArrayList<>();
    EnvelopeTier tier = EnvelopeTier.over(waveform, FACTOR);
    while (tier.length() > 0) {
      tiers.add(tier);
      tier = tier.above(FACTOR);
    }
    return new Envelope(waveform, List.copyOf(tiers));
  }

  /** The number of samples. */
  public int length() {
    return waveform.length();
  }

  /** The voltage of sample {@code index}. */
  public double voltsAt(int index) {
    return waveform.voltsAt(index);
  }

  /** The extent of all samples. */
  public VoltExtent extent() {
    return extent(0, length());
  }

  /**
   * The extent of samples {@code from} (inclusive) to {@code to} (exclusive): none for an empty
   * range.
   *
   * @throws IndexOutOfBoundsException if the waveform has no such samples
   */
  public VoltExtent extent(int from, int to) {
    Objects.checkFromToIndex(from, to, length());
    ExtentSoFar found = new ExtentSoFar();
    if (to - from < 2 * FACTOR || tiers.isEmpty()) {
      addSamples(found, from, to);
    } else {
      int firstWhole = firstWholeFrom(from);
      int endOfWhole = to / FACTOR;
      addSamples(found, from, firstWhole * FACTOR);
      addSamples(found, endOfWhole * FACTOR, to);
      addTiers(found, firstWhole, endOfWhole);
    }
    return found.extent();
  }

  private void addSamples(ExtentSoFar found, int from, int to) {
    for (int i = from; i < to; i++) {
      double volts = waveform.voltsAt(i);
      found.add(volts, volts);
    }
  }

  private void addTiers(ExtentSoFar found, int fromBucket, int toBucket) {
    int from = fromBucket;
    int to = toBucket;
    for (int height = 0; ; height++) {
      EnvelopeTier tier = tiers.get(height);
      if (to - from < 2 * FACTOR || height == tiers.size() - 1) {
        tier.addTo(found, from, to);
        return;
      }
      int firstWhole = firstWholeFrom(from);
      int endOfWhole = to / FACTOR;
      tier.addTo(found, from, firstWhole * FACTOR);
      tier.addTo(found, endOfWhole * FACTOR, to);
      from = firstWhole;
      to = endOfWhole;
    }
  }

  /** The first bucket that starts at {@code index} or later. */
  private static int firstWholeFrom(int index) {
    return -Math.floorDiv(-index, FACTOR);
  }
}

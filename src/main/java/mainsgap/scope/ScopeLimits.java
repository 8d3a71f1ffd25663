package mainsgap.scope;

import java.util.Set;

/**
 * What an instrument can do, as its profile says.
 *
 * @param channels the number of input channels, from 1
 * @param smallestFullScalePeakVolts at the input, probe factor 1
 * @param largestFullScalePeakVolts at the input, probe factor 1
 * @param shortestIntervalSeconds the fastest sampling
 * @param longestIntervalSeconds the slowest sampling
 * @param smallestRecord in samples
 * @param largestRecord in samples
 * @param converterBits the resolution of a sample
 * @param timeBasePpm the accuracy of the time base
 * @param methods the ways to catch a loss that it offers
 */
public record ScopeLimits(
    int channels,
    double smallestFullScalePeakVolts,
    double largestFullScalePeakVolts,
    double shortestIntervalSeconds,
    double longestIntervalSeconds,
    int smallestRecord,
    int largestRecord,
    int converterBits,
    double timeBasePpm,
    Set<CatchMethod> methods) {

  /** Takes its own copy of the methods. */
  public ScopeLimits {
    methods = Set.copyOf(methods);
  }
}

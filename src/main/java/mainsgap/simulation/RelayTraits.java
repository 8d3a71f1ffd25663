package mainsgap.simulation;

import java.util.SplittableRandom;

/**
 * The relay of a unit and its way to notice a loss. Orders of magnitude are common practice for
 * power relays; no real unit is meant.
 *
 * @param thresholdShare how far the mains may stray, as a fraction of nominal peak
 * @param holdSeconds for how long it must stray
 * @param releaseSeconds from the decision to the opening of the contact, at least
 * @param flightSeconds from there to the other contact, at least
 * @param spread how much longer both may take, as a fraction
 * @param mostBounces of the contact that makes
 * @param longestStretchSeconds of one bounce, half of it
 */
record RelayTraits(
    double thresholdShare,
    double holdSeconds,
    double releaseSeconds,
    double flightSeconds,
    double spread,
    int mostBounces,
    double longestStretchSeconds) {

  /** A general-purpose power relay and an unhurried detector. */
  static final RelayTraits STANDBY = new RelayTraits(0.3, 1.2e-3, 4e-3, 1.6e-3, 0.3, 3, 0.25e-3);

  /** A small fast relay and a quick detector. */
  static final RelayTraits FAST = new RelayTraits(0.2, 0.3e-3, 1e-3, 0.6e-3, 0.4, 2, 0.15e-3);

  static RelayTraits of(SimulatedUnit unit) {
    return unit == SimulatedUnit.LINE_INTERACTIVE ? FAST : STANDBY;
  }

  LossDetector detector(double nominalVolts) {
    return new LossDetector(thresholdShare * nominalVolts * Math.sqrt(2), holdSeconds);
  }

  /** When the contact that held opens, for a decision at {@code seconds}. */
  double releaseAfter(double seconds, SplittableRandom random) {
    return seconds + releaseSeconds * (1 + spread * random.nextDouble());
  }

  /** How the other contact makes, for an opening at {@code seconds}. */
  ContactEdges makeAfter(double seconds, SplittableRandom random) {
    double makeSeconds = seconds + flightSeconds * (1 + spread * random.nextDouble());
    int bounces = random.nextInt(mostBounces + 1);
    return ContactEdges.bouncing(makeSeconds, bounces, longestStretchSeconds, random);
  }
}

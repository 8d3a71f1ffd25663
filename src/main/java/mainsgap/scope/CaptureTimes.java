package mainsgap.scope;

import mainsgap.signal.Event;

/**
 * The times that a record must hold around the event.
 *
 * <p>Sources: protocols for time-out triggers (common practice), the 10/12-cycle window of IEC
 * 61000-4-7 for a spectrum of each supply; the margins are common practice.
 */
final class CaptureTimes {
  /** A trigger's level as a part of the peak; pickup in the gap stays below it. */
  static final double LEVEL_OF_PEAK = 0.3;

  /** Where no time is declared: longer than the units that feed computers take. */
  private static final double ASSUMED_RATED_SECONDS = 0.1;

  private static final double LONGEST_OVER_RATED = 3;
  private static final double LEAST_OVER_RATED_SECONDS = 0.1;

  /** IEC 61000-4-7: 10 cycles at 50 Hz, 12 at 60 Hz. */
  private static final double SPECTRUM_SECONDS = 0.2;

  private static final double SETTLING_CYCLES = 5;

  /** For a low or slow supply, which is quiet for longer than the nominal one. */
  private static final double QUIET_MARGIN_CYCLES = 0.05;

  private final CaptureRequest request;

  CaptureTimes(CaptureRequest request) {
    this.request = request;
  }

  double ratedSeconds() {
    Double rated = request.ratedSeconds();
    return rated == null ? ASSUMED_RATED_SECONDS : rated;
  }

  /** The longest transfer that the record should show whole, so that a late return is measured. */
  double longestTransferSeconds() {
    return Math.max(LONGEST_OVER_RATED * ratedSeconds(), ratedSeconds() + LEAST_OVER_RATED_SECONDS);
  }

  /** The settled supply before the event: the spectrum's window and a cycle to place it in. */
  double beforeSeconds() {
    return SPECTRUM_SECONDS + request.cycleSeconds();
  }

  /** From the event on: the transfer, the settling, the spectrum's window. */
  double afterSeconds() {
    return longestTransferSeconds()
        + SETTLING_CYCLES * request.cycleSeconds()
        + SPECTRUM_SECONDS
        + request.cycleSeconds();
  }

  /** How long the trigger waits: what a healthy supply is quiet at most, and a margin. */
  double quietSeconds(CatchMethod method) {
    return BlindZone.healthySeconds(method, LEVEL_OF_PEAK, request.nominalFrequencyHertz())
        + QUIET_MARGIN_CYCLES * request.cycleSeconds();
  }

  /** What a trigger on quiet cannot see. */
  BlindZone blindZone(CatchMethod method) {
    return new BlindZone(
        method, LEVEL_OF_PEAK, quietSeconds(method), request.nominalFrequencyHertz());
  }

  /** How long the unit may take after mains came back; nothing where mains is lost. */
  double unitWaitSeconds() {
    return request.event() == Event.RESTORATION ? request.longestCheckSeconds() : 0;
  }
}

package mainsgap.transfer.supply;

/**
 * How much later than its fit a supply is, cycle by cycle: that of an inverter which walks its
 * frequency to that of mains moves all the time, that of a load which is not fed tells nothing.
 */
final class FollowedPhase {
  /** A supply moves by no more in a cycle. */
  private static final double MOST_CYCLES = 0.02;

  private final double omega;
  private final double supplyAngle;
  private final double cycleSeconds;
  private double fromSeconds = Double.NaN;
  private double cosine;
  private double sine;
  private double cosineSquares;
  private double products;
  private double sineSquares;
  private boolean isAway;
  private double laterSeconds;

  FollowedPhase(Supply supply) {
    double hertz = supply.harmonics().frequencyHertz();
    this.omega = 2 * Math.PI * hertz;
    this.cycleSeconds = 1 / hertz;
    this.supplyAngle = Math.toRadians(supply.harmonics().angleDegreesAt(0));
  }

  /**
   * Takes an average.
   *
   * @param seconds its time on the axis of the fit
   * @param away whether it is not what the supply does: such a cycle tells nothing
   * @return whether a cycle is over that tells the phase
   */
  boolean add(double seconds, double volts, boolean away) {
    if (Double.isNaN(fromSeconds)) {
      fromSeconds = seconds;
    }
    double cos = Math.cos(omega * seconds);
    double sin = Math.sin(omega * seconds);
    cosine += volts * cos;
    sine += volts * sin;
    cosineSquares += cos * cos;
    products += cos * sin;
    sineSquares += sin * sin;
    isAway |= away;
    if (seconds - fromSeconds < cycleSeconds) {
      return false;
    }
    // a cos + b sin by least squares: a cycle is no whole number of averages
    double a = cosine * sineSquares - sine * products;
    double b = sine * cosineSquares - cosine * products;
    double ahead = Math.IEEEremainder(Math.atan2(a, b) - supplyAngle, 2 * Math.PI);
    laterSeconds = -ahead / omega;
    boolean tells = !isAway && Math.abs(laterSeconds) < MOST_CYCLES * cycleSeconds;
    fromSeconds = Double.NaN;
    cosine = 0;
    sine = 0;
    cosineSquares = 0;
    products = 0;
    sineSquares = 0;
    isAway = false;
    return tells;
  }

  /** By how much later than expected the last cycle was. */
  double laterSeconds() {
    return laterSeconds;
  }
}

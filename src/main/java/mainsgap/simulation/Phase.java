package mainsgap.simulation;

/**
 * The phase of a fundamental that runs evenly.
 *
 * @param hertz its frequency
 * @param anchorSeconds where its angle is known
 * @param anchorDegrees the angle there
 */
record Phase(double hertz, double anchorSeconds, double anchorDegrees) {

  /** The angle at {@code seconds}, 0 (inclusive) to 360 (exclusive). */
  double degreesAt(double seconds) {
    double degrees = (anchorDegrees + 360 * hertz * (seconds - anchorSeconds)) % 360;
    return degrees < 0 ? degrees + 360 : degrees;
  }

  /** The angle at {@code seconds} in radians, not wrapped. */
  double radiansAt(double seconds) {
    return Math.toRadians(anchorDegrees) + 2 * Math.PI * hertz * (seconds - anchorSeconds);
  }

  /** {@code degrees} wrapped to -180 (exclusive) to 180 (inclusive). */
  static double wrapped(double degrees) {
    double turned = degrees % 360;
    if (turned > 180) {
      return turned - 360;
    }
    return turned <= -180 ? turned + 360 : turned;
  }
}

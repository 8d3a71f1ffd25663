package mainsgap.simulation;

/** A voltage with a fundamental: the mains, or an inverter. */
interface Supply extends Voltage {

  /** The angle of the fundamental at {@code seconds}, 0 to 360; 0 at its positive-going zero. */
  double degreesAt(double seconds);

  /** The frequency of the fundamental. */
  double hertz();
}

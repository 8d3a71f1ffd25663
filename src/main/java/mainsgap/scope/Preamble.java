package mainsgap.scope;

import java.util.stream.DoubleStream;
import mainsgap.scope.TenFields.Scaling;
import mainsgap.signal.Scale;

/**
 * The ten numbers that say what codes mean: format, type, points, count, xincrement, xorigin,
 * xreference, yincrement, yorigin, yreference (the order that many families share). The format is
 * not kept: families give its numbers different meanings, so the width of a code comes from the
 * block's length.
 */
record Preamble(int points, Axis x, Axis y) {
  private static final int FIELDS = 10;

  /** The three numbers of one axis. */
  record Axis(double increment, double origin, double reference) {}

  /**
   * Checks the fields as they came.
   *
   * @throws ScopeException if they are not ten numbers that can place a sample
   */
  static Preamble of(double[] fields) {
    if (fields.length != FIELDS) {
      throw new ScopeException(
          "the preamble has " + fields.length + " fields, expected 10: does the profile fit?");
    }
    if (!DoubleStream.of(fields).skip(2).allMatch(Double::isFinite)) {
      throw new ScopeException("the preamble has a field that is not a number");
    }
    double points = fields[2];
    if (!(points >= 1 && points <= Integer.MAX_VALUE && points == Math.rint(points))) {
      throw new ScopeException(
          "the preamble claims " + points + " points, expected a whole number of at least 1");
    }
    Axis x = new Axis(fields[4], fields[5], fields[6]);
    Axis y = new Axis(fields[7], fields[8], fields[9]);
    if (!(x.increment() > 0)) {
      throw new ScopeException(
          "the preamble has the x increment " + x.increment() + " s, expected one above 0 s");
    }
    if (y.increment() == 0) {
      throw new ScopeException(
          "the preamble has the y increment 0 V: no code would mean a voltage");
    }
    return new Preamble((int) points, x, y);
  }

  /** The time of sample 0. */
  double firstSampleSeconds() {
    return x.origin() - x.reference() * x.increment();
  }

  /**
   * How codes become volts, without rails.
   *
   * @throws ScopeException if the y origin cannot be what {@code scaling} says
   */
  Scale scale(Scaling scaling) {
    return switch (scaling) {
      case ORIGIN_IN_VOLTS -> unrailed(y.reference(), y.increment(), y.origin());
      case ORIGIN_IN_CODES -> {
        if (y.origin() != Math.rint(y.origin())) {
          throw new ScopeException(
              "the preamble has the y origin "
                  + y.origin()
                  + ", which is no number of codes: set 'waveform.scaling' to origin-in-volts");
        }
        yield unrailed(y.reference() + y.origin(), y.increment(), 0);
      }
    };
  }

  private static Scale unrailed(double referenceCode, double voltsPerCode, double originVolts) {
    return new Scale(
        referenceCode,
        voltsPerCode,
        originVolts,
        Double.NEGATIVE_INFINITY,
        Double.POSITIVE_INFINITY);
  }
}

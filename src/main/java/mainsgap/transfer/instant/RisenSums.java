package mainsgap.transfer.instant;

/**
 * Sums of products from each block of a {@link RiseFit} to the last one, 0 behind it: v stands for
 * the voltage, a for the supply and b for the same a quarter of a cycle later. Arrays are owned.
 */
@SuppressWarnings("ArrayRecordComponent") // owned, made for one fit
record RisenSums(double[] vv, double[] va, double[] vb, double[] aa, double[] ab, double[] bb) {

  static RisenSums of(double[] v, double[] a, double[] b) {
    return new RisenSums(
        products(v, v),
        products(v, a),
        products(v, b),
        products(a, a),
        products(a, b),
        products(b, b));
  }

  private static double[] products(double[] one, double[] other) {
    double[] sums = new double[one.length + 1];
    for (int k = one.length - 1; k >= 0; k--) {
      sums[k] = sums[k + 1] + one[k] * other[k];
    }
    return sums;
  }
}

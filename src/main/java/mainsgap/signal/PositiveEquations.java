package mainsgap.signal;

/**
 * Linear equations with a symmetric positive definite matrix, such as normal equations are, by
 * Cholesky's decomposition in the place of the matrix.
 */
final class PositiveEquations {
  /** A smaller pivot is none. */
  private static final double LEAST_PIVOT = 1e-300;

  private PositiveEquations() {}

  /**
   * Solves {@code (matrix + ridge 1) x = right}.
   *
   * @param matrix symmetric; what lies below its diagonal is overwritten, the rest is left and is
   *     all that counts
   * @param right of the same size, at least 1; overwritten by x
   * @return whether the matrix is positive definite; if not, {@code right} is left unchanged
   */
  static boolean solve(double[][] matrix, double ridge, double[] right) {
    int size = right.length;
    double[] pivots = new double[size];
    for (int p = 0; p < size; p++) {
      for (int q = 0; q <= p; q++) {
        double rest = q == p ? matrix[p][p] + ridge : matrix[q][p];
        for (int k = 0; k < q; k++) {
          rest -= matrix[p][k] * matrix[q][k];
        }
        if (q < p) {
          matrix[p][q] = rest / pivots[q];
        } else if (!(rest > LEAST_PIVOT)) { // nor not a number
          return false;
        } else {
          pivots[p] = Math.sqrt(rest);
        }
      }
    }
    for (int p = 0; p < size; p++) {
      for (int k = 0; k < p; k++) {
        right[p] -= matrix[p][k] * right[k];
      }
      right[p] /= pivots[p];
    }
    for (int p = size - 1; p >= 0; p--) {
      right[p] /= pivots[p];
      for (int k = 0; k < p; k++) {
        right[k] -= matrix[p][k] * right[p];
      }
    }
    return true;
  }
}

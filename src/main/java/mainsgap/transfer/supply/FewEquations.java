package mainsgap.transfer.supply;

/** A few linear equations, by elimination in the place of their matrix, largest pivots first. */
final class FewEquations {
  private FewEquations() {}

  /**
   * Solves {@code matrix x = right}.
   *
   * @param matrix square; overwritten
   * @param right of the same size; overwritten by x
   * @param least a pivot below it is none
   * @return whether the matrix has a pivot in each row
   */
  static boolean solve(double[][] matrix, double[] right, double least) {
    int size = right.length;
    for (int p = 0; p < size; p++) {
      swap(matrix, right, p, largest(matrix, p));
      double pivot = matrix[p][p];
      if (!(Math.abs(pivot) >= least)) { // nor not a number
        return false;
      }
      for (int row = p + 1; row < size; row++) {
        double share = matrix[row][p] / pivot;
        for (int q = p + 1; q < size; q++) {
          matrix[row][q] -= share * matrix[p][q];
        }
        right[row] -= share * right[p];
      }
    }
    for (int p = size - 1; p >= 0; p--) {
      for (int q = p + 1; q < size; q++) {
        right[p] -= matrix[p][q] * right[q];
      }
      right[p] /= matrix[p][p];
    }
    return true;
  }

  private static int largest(double[][] matrix, int column) {
    int largest = column;
    for (int row = column + 1; row < matrix.length; row++) {
      if (Math.abs(matrix[row][column]) > Math.abs(matrix[largest][column])) {
        largest = row;
      }
    }
    return largest;
  }

  private static void swap(double[][] matrix, double[] right, int one, int other) {
    double[] row = matrix[one];
    matrix[one] = matrix[other];
    matrix[other] = row;
    double value = right[one];
    right[one] = right[other];
    right[other] = value;
  }
}

package mainsgap.transfer.supply;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class FewEquationsTest {
  private static final double LEAST = 1e-12;

  @Test
  void unknownsAreFoundWhereTheFirstPivotIsNothing() {
    double[][] matrix = {{0, 2, 1}, {3, 1, -1}, {1, 0, 2}};
    double[] right = {2 * 2 + 3, 3 + 2 - 3, 1 + 6};

    assertTrue(FewEquations.solve(matrix, right, LEAST));

    assertArrayEquals(new double[] {1, 2, 3}, right, 1e-12);
  }

  @Test
  void equationsThatSayTheSameAreNotSolved() {
    assertFalse(FewEquations.solve(new double[][] {{1, 2}, {2, 4}}, new double[] {1, 2}, LEAST));
  }
}

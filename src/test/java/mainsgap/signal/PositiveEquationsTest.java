package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PositiveEquationsTest {
  @Test
  void unknownsAreFound() {
    double[][] matrix = {{4, 1, -1}, {1, 5, 0}, {-1, 0, 3}};
    double[] right = {4 + 2 - 3, 1 + 10, -1 + 9};

    assertTrue(PositiveEquations.solve(matrix, 0, right));

    assertArrayEquals(new double[] {1, 2, 3}, right, 1e-12);
  }

  @Test
  void matrixThatIsNotPositiveIsToldAndCanBeTriedAgainWithARidge() {
    double[][] singular = {{1, 1}, {1, 1}};
    double[] right = {2, 2};

    assertFalse(PositiveEquations.solve(singular, 0, right));
    assertTrue(PositiveEquations.solve(singular, 1e-9, right));

    assertArrayEquals(new double[] {1, 1}, right, 1e-6);
  }
}

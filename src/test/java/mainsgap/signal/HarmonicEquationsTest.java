package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sums in closed form held against sums over the samples. */
class HarmonicEquationsTest {
  private static final int ORDERS = 7;
  private static final double HERTZ = 50.3;

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-4, 3e-3, 0.1, 1, 3})
  void sumsOverEquidistantTimesComeInClosedForm(double step) {
    int count = 5001;
    double interval = 2e-5;
    double cosines = 0;
    double timesSines = 0;
    double squaresCosines = 0;
    for (int i = 0; i < count; i++) {
      double place = i - (count - 1) / 2.0;
      cosines += Math.cos(step * place);
      timesSines += interval * place * Math.sin(step * place);
      squaresCosines += interval * interval * place * place * Math.cos(step * place);
    }
    EquidistantSums sums = new EquidistantSums(count, interval);

    assertEquals(cosines, sums.cosines(step), 1e-9 * count);
    assertEquals(timesSines, sums.timesSines(step), 1e-9 * count * count * interval);
    assertEquals(squaresCosines, sums.squaresCosines(step), 1e-9 * count);
  }

  @ParameterizedTest
  @CsvSource({"4000, 1", "4001, 1", "3998, 3"})
  void equationsAreThoseOfTheSamples(int length, int stride) {
    SampledWindow window = window(length, stride);
    double[] unknowns = new double[2 + 2 * ORDERS];
    java.util.Arrays.setAll(unknowns, p -> Math.cos(p) * 100);
    int size = unknowns.length + 1;
    double[][] matrix = new double[size][size];
    double[] right = new double[size];
    for (int i = 0; i < window.count(); i++) {
      double[] row = row(window, i, unknowns);
      for (int p = 0; p < size; p++) {
        right[p] += row[p] * window.voltsAt(i);
        for (int q = 0; q < size; q++) {
          matrix[p][q] += row[p] * row[q];
        }
      }
    }

    HarmonicEquations equations = new HarmonicEquations(window, HERTZ, ORDERS, true);

    double[][] found = new double[size][size];
    equations.fill(found, unknowns);
    for (int p = 0; p < size; p++) {
      for (int q = 0; q < size; q++) {
        double scale = Math.sqrt(matrix[p][p] * matrix[q][q]);
        assertEquals(matrix[p][q], found[p][q], 1e-9 * scale, p + ", " + q);
      }
    }
    assertArrayEquals(right, equations.rightSide(unknowns), 1e-6);
  }

  @Test
  void cleanHarmonicsAreFoundAgain() {
    TimeAxis time = new TimeAxis(-0.02, 1e-5, 15_000, 0);
    HarmonicModel truth =
        new HarmonicModel(
            0.03, HERTZ, 2, 5, new double[] {100, 3, -4}, new double[] {300, 0, 7}, 0, 0);
    double[] volts = new double[time.length()];
    java.util.Arrays.setAll(volts, i -> truth.voltsAt(time.secondsAt(i)));

    HarmonicModel found = HarmonicFit.fit(volts, time, 500, 14_000, 50, 5, true);

    assertEquals(HERTZ, found.frequencyHertz(), 1e-8);
    assertEquals(truth.amplitudeVolts(3), found.amplitudeVolts(3), 1e-6);
    assertEquals(truth.voltsAt(0.1), found.voltsAt(0.1), 1e-6);
    assertEquals(0, found.noiseVolts(), 1e-6);
  }

  private static SampledWindow window(int length, int stride) {
    SplittableRandom random = new SplittableRandom(3);
    double[] volts = new double[length + 20];
    java.util.Arrays.setAll(volts, i -> random.nextDouble() - 0.5);
    return SampledWindow.of(volts, new TimeAxis(5, 1e-5, volts.length, 0), 20, length, stride);
  }

  private static double[] row(SampledWindow window, int index, double[] unknowns) {
    double t = (index - (window.count() - 1) / 2.0) * window.intervalSeconds();
    double[] row = new double[unknowns.length + 1];
    row[0] = 1;
    row[1] = t;
    for (int k = 1; k <= ORDERS; k++) {
      double angle = 2 * Math.PI * HERTZ * k * t;
      row[2 * k] = Math.cos(angle);
      row[2 * k + 1] = Math.sin(angle);
      row[row.length - 1] +=
          2
              * Math.PI
              * t
              * k
              * (unknowns[2 * k + 1] * Math.cos(angle) - unknowns[2 * k] * Math.sin(angle));
    }
    return row;
  }
}

package mainsgap.transfer.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import mainsgap.signal.TimeAxis;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Costs of a sweep held against sums of their own for each instant. */
class ShapeSweepTest {
  private static final double PEAK = 325;
  private static final int SAMPLES = 700;

  @ParameterizedTest
  @CsvSource({
    "APPROACH, 1e-5, NaN",
    "APPROACH, 3e-4, NaN",
    "APPROACH, 2e-2, NaN",
    "RING, 4e-4, 900",
    "RING, 1.3e-3, 4100",
    "SOFT_START, 7e-4, NaN",
    "SOFT_START, 4e-2, NaN",
    "RAMP, 1.5e-3, NaN",
    "RAMP, 1e-5, NaN",
    "RAMP, 8e-2, NaN"
  })
  void sweptCostsAreThoseOfEachInstant(EdgeShape shape, double seconds, double hertz) {
    WeighedWindow window = WeighedWindow.of(window());
    EdgeShape.Setting setting = new EdgeShape.Setting(seconds, hertz);
    int first = 40;
    int last = SAMPLES - 1;

    double[] costs = ShapeSweep.extraCosts(shape, window, first, last, setting);

    for (int sample = first; sample <= last; sample++) {
      double alone = shape.extraCost(window, sample, setting);
      assertEquals(alone, costs[sample - first], 1e-7 * (1 + Math.abs(alone)));
    }
  }

  private static EdgeWindow window() {
    SplittableRandom random = new SplittableRandom(5);
    TimeAxis time = new TimeAxis(-1e-3, 10e-6, SAMPLES, 0);
    double[] volts = new double[SAMPLES];
    double[] earlier = new double[SAMPLES];
    double[] later = new double[SAMPLES];
    double[] spread = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double seconds = time.secondsAt(i);
      earlier[i] = 5;
      later[i] = PEAK * Math.sin(2 * Math.PI * 50 * seconds);
      volts[i] = (i < SAMPLES / 2 ? earlier[i] : later[i]) + random.nextDouble(-3, 3);
      spread[i] = 1 + random.nextDouble();
    }
    boolean[] alike = new boolean[SAMPLES];
    return new EdgeWindow(volts, earlier, later, spread, spread, alike, 1, time, 1, 1);
  }
}

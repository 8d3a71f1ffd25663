package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class RailsTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  /** Five cycles of {@code shape} (of the phase in radians), in steps of {@code step}. */
  private static double[] samples(int perCycle, double step, DoubleUnaryOperator shape) {
    double[] samples = new double[5 * perCycle];
    for (int i = 0; i < 5 * perCycle; i++) {
      double volts = shape.applyAsDouble(2 * Math.PI * i / perCycle);
      samples[i] = Math.rint(volts / step) * step;
    }
    return samples;
  }

  static Stream<Arguments> shapes() {
    Random noise = new Random(1);
    return Stream.of(
        Arguments.of("clipped sine", 2000, 2, cut(325, 280), 280),
        Arguments.of("clipped sine, few samples", 200, 2, cut(325, 280), 280),
        Arguments.of("deeply clipped sine", 2000, 2, cut(325, 160), 160),
        Arguments.of("clipped high by a bias", 2000, 2, highCut(325, 280), 280),
        Arguments.of("8-bit sine", 2000, 4, cut(325, 400), NONE),
        Arguments.of("8-bit sine, few samples", 200, 4, cut(325, 400), NONE),
        Arguments.of("8-bit sine, many samples", 20_000, 4, cut(325, 400), NONE),
        Arguments.of(
            "noisy sine",
            2000,
            2,
            (DoubleUnaryOperator) p -> 325 * Math.sin(p) + 3 * noise.nextGaussian(),
            NONE),
        Arguments.of(
            "square wave",
            2000,
            2,
            (DoubleUnaryOperator)
                p -> Math.abs(Math.sin(p)) < 0.5 ? 0 : 325 * Math.signum(Math.sin(p)),
            NONE),
        Arguments.of("no signal", 2000, 2, (DoubleUnaryOperator) p -> 0, NONE));
  }

  private static DoubleUnaryOperator cut(double peak, double rail) {
    return phase -> Math.max(-rail, Math.min(rail, peak * Math.sin(phase)));
  }

  private static DoubleUnaryOperator highCut(double peak, double rail) {
    return phase -> Math.min(rail, peak * Math.sin(phase));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("shapes")
  void railsAreKnownWhereASineIsCutOff(
      String name, int perCycle, double step, DoubleUnaryOperator shape, double highest) {
    double[] samples = samples(perCycle, step, shape);
    Scale scale = Rails.scaleOf(samples.length, i -> samples[i]);
    assertEquals(highest, scale.highestCode());
    boolean isCutBelow = highest < NONE && !name.contains("bias");
    assertEquals(isCutBelow ? -highest : -NONE, scale.lowestCode());
  }

  @Test
  void peakThatIsCutOffOnceIsAFindingAndNoRail() {
    double[] volts = samples(2000, 2, phase -> phase < 15 ? 325 * Math.sin(phase) : 0);
    for (int i = 6000; i < volts.length; i++) {
      double overshoot = 300 * Math.exp(-(i - 6000) / 300.0);
      volts[i] = Math.min(400, Math.rint((325 * Math.cos(i * Math.PI / 1000) + overshoot) / 2) * 2);
    }
    assertEquals(NONE, Rails.scaleOf(volts.length, i -> volts[i]).highestCode());
    assertTrue(Rails.isPeakCutIn(volts, 6000, volts.length));
    assertFalse(Rails.isPeakCutIn(volts, 7000, volts.length));
  }

  @Test
  void peakThatIsRoundOrSquareIsNotCutOff() {
    double[] round = samples(2000, 4, cut(325, 400));
    double[] square = samples(2000, 4, phase -> 325 * Math.signum(Math.sin(phase)));
    assertFalse(Rails.isPeakCutIn(round, 0, round.length));
    assertFalse(Rails.isPeakCutIn(square, 0, square.length));
  }
}

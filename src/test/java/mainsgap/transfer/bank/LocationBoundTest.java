package mainsgap.transfer.bank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A loss of 230 V, 50 Hz to 0 V at 100 kS/s in noise of 3 V. The scatter of the most likely instant
 * was computed with NumPy: 33.7 µs at 0 degrees, 4.3 µs at 2, the sampling's 2.9 µs from 5 on.
 */
class LocationBoundTest {
  private static final double SAMPLE_MICROS = 10;

  /** The law is that of many samples; few within the scatter make it a little smaller. */
  @Test
  void lossAtAZeroCrossingIsToldAsWellAsByTheMostLikelyInstant() {
    assertEquals(33.7, LocationBound.lossSeconds(rig(0)) * 1e6, 0.2 * 33.7);
  }

  @ParameterizedTest
  @CsvSource({"2", "5", "45", "90"})
  void lossOffAZeroCrossingIsToldToASample(double degrees) {
    assertTrue(LocationBound.lossSeconds(rig(degrees)) * 1e6 <= SAMPLE_MICROS);
  }

  /** The bound rests on that scatter: it is drawn again here, from the likelihood itself. */
  @ParameterizedTest
  @CsvSource({"0, 33.7, 3", "2, 4.3, 1"})
  void mostLikelyInstantScattersAsComputed(double degrees, double micros, double within) {
    Dice dice = new Dice(1);
    int draws = 4000;
    double squares =
        IntStream.range(0, draws)
            .mapToDouble(draw -> errorMicros(degrees, dice.share() - 0.5, dice))
            .map(error -> error * error)
            .sum();

    assertEquals(micros, Math.sqrt(squares / draws), within);
  }

  /** 26 (s/D)^4 samples squared, for a step D. */
  @Test
  void smallStepIsToldAsWellAsByTheMostLikelyInstant() {
    Rig rig = rig(90);
    rig.noiseShare = 2;

    double samples = LocationBound.lossSeconds(rig) * 1e6 / SAMPLE_MICROS;

    assertEquals(Math.sqrt(26) * 4, samples, 0.1 * Math.sqrt(26) * 4);
  }

  @Test
  void lawOfTheMostLikelyInstantHasTheKnownMeanSquare() {
    double sum = 0;
    double step = 0.01;
    for (double x = step / 2; x < 100; x += step) {
      double share = ChangePointLaw.within(x + step / 2) - ChangePointLaw.within(x - step / 2);
      sum += x * x * share;
    }

    assertEquals(26, sum, 0.01);
  }

  @Test
  void returnWithinARestIsToldToTheRestsEnd() {
    Rig rig = rig(90);
    rig.shape = Rig.Shape.QUASI_SQUARE;
    rig.outputDegreesAtReturn = 0;

    // 45 degrees of 50 Hz are left of the rest, as many are before it
    assertEquals(2500, LocationBound.seconds(rig) * 1e6, 50);
  }

  /** The gap may end anywhere in the rest, also later than twice as long. */
  @Test
  void shortGapIsToldToTheRestsEndToo() {
    Rig rig = rig(90);
    rig.shape = Rig.Shape.QUASI_SQUARE;
    rig.outputDegreesAtReturn = 0;
    rig.gapSeconds = 2e-3;

    // 2500 to the rest's end, 2000 back to the loss: the scatter over both
    assertEquals(2250, LocationBound.seconds(rig) * 1e6, 250);
  }

  private static Rig rig(double lossDegrees) {
    Rig rig = new Rig(1);
    rig.nominalVolts = 230;
    rig.nominalHertz = 50;
    rig.mainsHertz = 50;
    rig.outputHertz = 50;
    rig.outputShare = 1;
    rig.mainsHarmonics = new double[0];
    rig.sampleRateHertz = 100e3;
    rig.bits = 16;
    rig.noiseShare = 3 / rig.peakVolts();
    rig.gapSeconds = 20e-3;
    rig.lossDegrees = lossDegrees;
    return rig;
  }

  /** The grid lies {@code offset} samples off the loss; the supplies on both sides are known. */
  private static double errorMicros(double degrees, double offset, Dice dice) {
    int side = 40;
    double best = Double.POSITIVE_INFINITY;
    double score = 0;
    int instant = -side;
    for (int i = -side; i < side; i++) {
      if (score < best) {
        best = score;
        instant = i;
      }
      double angle =
          2 * Math.PI * 50 * (i + offset + 0.5) * SAMPLE_MICROS * 1e-6 + Math.toRadians(degrees);
      double supply = 230 * Math.sqrt(2) * Math.sin(angle);
      double volts = (i + offset + 0.5 < 0 ? supply : 0) + 3 * dice.gaussian();
      score += (volts - supply) * (volts - supply) - volts * volts;
    }
    return (instant + offset) * SAMPLE_MICROS;
  }
}

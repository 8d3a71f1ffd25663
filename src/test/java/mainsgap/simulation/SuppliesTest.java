package mainsgap.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import mainsgap.simulation.SteppedSupply.SoftStart;
import org.junit.jupiter.api.Test;

/** The supplies against the closed forms of their waves. */
class SuppliesTest {
  private static final Phase FIFTY_HERTZ = new Phase(50, 0, 0);

  @Test
  void sineHasItsRmsAndItsZeroWhereThePhaseSays() {
    HarmonicSupply sine = new HarmonicSupply(FIFTY_HERTZ, 230, 0, new SplittableRandom(1));
    assertEquals(230, Levels.rmsOf(sine, 0, 0.02), 1e-6);
    assertEquals(0, sine.voltsAt(0), 1e-9);
    assertEquals(230 * Math.sqrt(2), sine.voltsAt(0.005), 1e-9);
    assertEquals(90, sine.degreesAt(0.005), 1e-9);
    assertEquals(270, sine.degreesAt(-0.005), 1e-9);
  }

  @Test
  void harmonicsAddTheirSquares() {
    HarmonicSupply wave = new HarmonicSupply(FIFTY_HERTZ, 230, 0.1, new SplittableRandom(5));
    // RMS of orthogonal waves: the root of the sum of squares; shares 0.5, 1 and 0.45 of 10 %
    double expected = 230 * Math.sqrt(1 + 0.01 * (0.25 + 1 + 0.2025));
    assertEquals(expected, Levels.rmsOf(wave, 0, 0.02), 1e-6);
    // half-wave symmetry: odd harmonics alone
    assertEquals(wave.voltsAt(0.0031), -wave.voltsAt(0.0131), 1e-9);
  }

  @Test
  void harmonicSumAgreesWithTheSinesOfItsOrders() {
    SplittableRandom random = new SplittableRandom(5);
    double third = random.nextDouble(2 * Math.PI);
    double fifth = random.nextDouble(2 * Math.PI);
    double seventh = random.nextDouble(2 * Math.PI);
    HarmonicSupply wave = new HarmonicSupply(FIFTY_HERTZ, 100, 0.1, new SplittableRandom(5));
    for (double at = -0.02; at < 0.02; at += 0.00037) {
      double radians = 2 * Math.PI * 50 * at;
      double expected =
          Math.sin(radians)
              + 0.05 * Math.sin(3 * radians + third)
              + 0.1 * Math.sin(5 * radians + fifth)
              + 0.045 * Math.sin(7 * radians + seventh);
      assertEquals(100 * Math.sqrt(2) * expected, wave.voltsAt(at), 1e-8);
    }
  }

  @Test
  void quasiSquareOfHalfDutyHasThePeakOfTheSine() {
    SteppedSupply square = new SteppedSupply(FIFTY_HERTZ, 230, new double[] {45}, SoftStart.hard());
    assertEquals(230 * Math.sqrt(2), square.voltsAt(0.005), 1e-9);
    assertEquals(-230 * Math.sqrt(2), square.voltsAt(0.015), 1e-9);
    assertEquals(0, square.voltsAt(0), 1e-9);
    assertEquals(0, square.voltsAt(0.01), 1e-9);
    assertEquals(230, Levels.rmsOf(square, 0, 0.02), 1);
  }

  @Test
  void steppedWaveStandsOnItsLevels() {
    SteppedSupply stepped =
        new SteppedSupply(FIFTY_HERTZ, 230, new double[] {75, 40}, SoftStart.hard());
    double step = stepped.stepVolts();
    assertEquals(0, stepped.voltsAt(0.0002), 1e-9);
    assertEquals(step, stepped.voltsAt(0.0018), 1e-9);
    assertEquals(2 * step, stepped.voltsAt(0.005), 1e-9);
    assertEquals(-2 * step, stepped.voltsAt(0.015), 1e-9);
    assertEquals(230, Levels.rmsOf(stepped, 0, 0.02), 1);
  }

  @Test
  void softStartComesUpFromItsFloor() {
    SteppedSupply soft =
        new SteppedSupply(FIFTY_HERTZ, 230, new double[] {45}, new SoftStart(0.005, 0.6, 0.008));
    double full = 230 * Math.sqrt(2);
    assertEquals(0.6 * full, soft.voltsAt(0.005), 1e-9);
    assertEquals(full * (1 - 0.4 * Math.exp(-20 / 8.0)), soft.voltsAt(0.025), 1e-6);
    assertEquals(full, soft.voltsAt(0.205), 1e-6);
  }

  @Test
  void ringEndsInTheSupplyAndBeginsAtItsShareOfTheStep() {
    HarmonicSupply sine = new HarmonicSupply(new Phase(50, 0, 90), 230, 0, new SplittableRandom(1));
    NodeVoltage node =
        new NodeVoltage.Pieces(Voltage.NONE)
            .fedAt(0, sine, new NodeVoltage.Ring(0.25, 1000, 0.5e-3))
            .build();
    double peak = 230 * Math.sqrt(2);
    assertEquals(0, node.voltsAt(-1e-9));
    assertEquals(0.75 * peak, node.voltsAt(0), 1e-6);
    // half a period of the ring later it has swung to the other side of the supply
    double half = 0.5e-3;
    assertEquals(sine.voltsAt(half) + 0.25 * peak / Math.E, node.voltsAt(half), 1e-6);
    assertEquals(sine.voltsAt(0.01), node.voltsAt(0.01));
  }

  @Test
  void openNodeKeepsAResidueThatDecays() {
    HarmonicSupply sine = new HarmonicSupply(new Phase(50, 0, 90), 230, 0, new SplittableRandom(1));
    NodeVoltage node = new NodeVoltage.Pieces(sine).openAt(0, 6e-3, Voltage.NONE).build();
    double peak = 230 * Math.sqrt(2);
    assertEquals(peak / Math.E, node.voltsAt(6e-3), 1e-6);
    assertTrue(node.voltsAt(0.1) < 1e-4);
  }
}

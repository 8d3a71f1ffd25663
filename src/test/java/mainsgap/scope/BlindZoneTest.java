package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against angles worked by hand on a sine of 360 degrees in 20 ms. */
class BlindZoneTest {
  private static final double LEVEL = 0.5; // crossed at 30 and 150 degrees
  private static final double MILLIS_A_DEGREE = 20.0 / 360;

  /** A time-out of 260 degrees, 20 more than a healthy sine is quiet for. */
  private static final BlindZone TIME_OUT = zone(CatchMethod.TIME_OUT_TRIGGER, 260);

  /** (180 + 2 asin d)/360 of a period (common practice): 11.94 and 9.95 ms at a level of 30 %. */
  @ParameterizedTest
  @CsvSource({
    "TIME_OUT_TRIGGER, 50, 11.940",
    "TIME_OUT_TRIGGER, 60, 9.950",
    "PULSE_WIDTH_TRIGGER, 50, 11.940",
    "DROPOUT_TRIGGER, 50, 20",
    "INTERVAL_TRIGGER, 60, 16.6667",
    "WINDOW_TRIGGER, 50, 1.940"
  })
  void healthySineIsQuietForSoLong(CatchMethod method, double hertz, double millis) {
    assertEquals(millis, 1e3 * BlindZone.healthySeconds(method, 0.3, hertz), 1e-3);
  }

  @Test
  void gapBeyondTheLevelStartsTheClockAnewAndEndsItAtTheReturn() {
    // from the peak for 100 degrees: back at 190, below the level until 390
    assertEquals(300, quietDegrees(TIME_OUT, 90, 100), 1e-9);
    // for 50 degrees: back at 140, above the level, which is a crossing
    assertEquals(50, quietDegrees(TIME_OUT, 90, 50), 1e-9);
  }

  @Test
  void gapBelowTheLevelLengthensTheQuietThatWasThere() {
    // quiet since 150; the crossing at 390 is hidden, the return at 440 is one
    assertEquals(290, quietDegrees(TIME_OUT, 370, 70), 1e-9);
    // wholly inside of the quiet part: nothing changes
    assertEquals(240, quietDegrees(TIME_OUT, 200, 100), 1e-9);
  }

  @Test
  void dropoutCountsRisesAlone() {
    BlindZone dropout = zone(CatchMethod.DROPOUT_TRIGGER, 400);
    // risen at 30; falls at 90, and is back beyond the level at 120: that is a rise
    assertEquals(90, quietDegrees(dropout, 90, 30), 1e-9);
    // back at 200, below: the next rise is at 390
    assertEquals(360, quietDegrees(dropout, 90, 110), 1e-9);
    // the rise at 390 is hidden, the return at 430 is one
    assertEquals(400, quietDegrees(dropout, 380, 50), 1e-9);
  }

  @Test
  void windowIsQuietNearZeroAlone() {
    BlindZone window = zone(CatchMethod.WINDOW_TRIGGER, 80);
    assertEquals(50, quietDegrees(window, 90, 50), 1e-9);
    // back at 170: inside until 210
    assertEquals(120, quietDegrees(window, 90, 80), 1e-9);
    // inside since 150, back at 240, beyond
    assertEquals(90, quietDegrees(window, 160, 80), 1e-9);
  }

  @Test
  void phaseOfTheReturnCounts() {
    // in step it would be back at 200, below; 250 degrees ahead it is at the peak
    assertEquals(110 * MILLIS_A_DEGREE / 1e3, TIME_OUT.quietSeconds(90, seconds(110), 250), 1e-12);
  }

  @Test
  void limitsAreTheTimeAndTheMargin() {
    assertEquals(seconds(260), TIME_OUT.sureFromSeconds(), 1e-12);
    assertEquals(seconds(20), TIME_OUT.neverUnderSeconds(), 1e-12);
    for (int start = 0; start < 360; start++) {
      for (int step = 0; step < 360; step += 15) {
        assertTrue(TIME_OUT.catches(start, seconds(260.001), step), "from " + start);
      }
      assertFalse(TIME_OUT.catches(start, seconds(19.9), 0), "from " + start);
    }
    // just before the rise, the margin is enough: quiet since 150, risen unseen, back at 410
    assertTrue(TIME_OUT.catches(389.99, seconds(20.02), 0));
  }

  @Test
  void shareOfPointsOnWaveIsThatOfTheAngles() {
    // back within 20 degrees after the start: only from 370 to 390 the hidden rise is enough
    assertEquals(1, TIME_OUT.missedPart(seconds(10)));
    assertEquals(0, TIME_OUT.missedPart(seconds(261)));
    // 30 degrees: from 380 to 390 (back from 410 on), and from 120 (back after 150) to 130
    assertEquals(1 - 20.0 / 360, TIME_OUT.missedPart(seconds(30)), 2.0 / 720);
    double between = TIME_OUT.missedPartBetween();
    assertTrue(between > 0.2 && between < 0.8, "found " + between);
  }

  @Test
  void triggerThatFiresOnAHealthySupplyIsRefused() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> zone(CatchMethod.TIME_OUT_TRIGGER, 239));
    assertEquals(
        "a healthy supply is quiet for 13.33 ms, and a trigger on 13.28 ms would fire on it: choose"
            + " a longer time",
        refused.getMessage());
  }

  private static BlindZone zone(CatchMethod method, double degrees) {
    return new BlindZone(method, LEVEL, seconds(degrees), 50);
  }

  private static double seconds(double degrees) {
    return degrees * MILLIS_A_DEGREE / 1e3;
  }

  private static double quietDegrees(BlindZone zone, double start, double gapDegrees) {
    return zone.quietSeconds(start, seconds(gapDegrees), 0) * 1e3 / MILLIS_A_DEGREE;
  }
}

package mainsgap.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import mainsgap.scope.BlindZone;
import mainsgap.scope.CatchMethod;
import mainsgap.simulation.Trigger.Fires;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The triggers of the simulated scope at work on a grid of gaps and points on wave, against the
 * closed form of the blind zone: what it calls caught is caught, what it calls blind is missed.
 */
class TriggersOnGapsTest {
  private static final double PEAK_VOLTS = 325;
  private static final double STEP_SECONDS = 5e-6;

  /** Nearer to a limit than some steps of the watch, either answer is right. */
  private static final double UNDECIDED_SECONDS = 4 * STEP_SECONDS;

  private static final double UNDECIDED_DEGREES = 0.4;

  @ParameterizedTest
  @CsvSource({
    "TIME_OUT_TRIGGER, 0.3, 12.94, 50, 0",
    "TIME_OUT_TRIGGER, 0.3, 10.78, 60, 0",
    "TIME_OUT_TRIGGER, 0.25, 13.5, 50, 0",
    "TIME_OUT_TRIGGER, 0.3, 12.94, 50, 137",
    "PULSE_WIDTH_TRIGGER, 0.3, 12.94, 50, 0",
    "DROPOUT_TRIGGER, 0.3, 21, 50, 0",
    "INTERVAL_TRIGGER, 0.3, 17.5, 60, 40",
    "WINDOW_TRIGGER, 0.3, 2.94, 50, 0",
    "WINDOW_TRIGGER, 0.3, 2.45, 60, 200"
  })
  void whatIsCalledCaughtIsCaughtAndWhatIsCalledBlindIsMissed(
      CatchMethod method, double level, double millis, double hertz, double stepDegrees) {
    BlindZone zone = new BlindZone(method, level, millis / 1e3, hertz);
    Trigger trigger = trigger(zone);
    int caught = 0;
    int missed = 0;
    for (double gap = 0.25e-3; gap < 1.1 * millis / 1e3; gap += millis / 20e3) {
      for (int start = 3; start < 360; start += 15) {
        boolean isCaught = zone.catches(start, gap, stepDegrees);
        if (isUndecided(zone, start, gap, stepDegrees)) {
          continue;
        }
        boolean fires = fires(trigger, start, gap, stepDegrees, hertz);
        assertEquals(isCaught, fires, "a gap of " + 1e3 * gap + " ms from " + start + " degrees");
        caught += fires ? 1 : 0;
        missed += fires ? 0 : 1;
      }
    }
    assertTrue(caught > 20 && missed > 20, caught + " caught and " + missed + " missed");
  }

  @Test
  void shareOfMissedPointsOnWaveIsTheOneThatIsSaid() {
    BlindZone zone = new BlindZone(CatchMethod.TIME_OUT_TRIGGER, 0.3, 12.94e-3, 50);
    int missed = 0;
    for (int start = 0; start < 360; start += 2) {
      missed += fires(trigger(zone), start + 0.7, 8e-3, 0, 50) ? 0 : 1;
    }
    assertEquals(zone.missedPart(8e-3), missed / 180.0, 0.02);
  }

  @Test
  void oneThatFiresAtTheEndComesWithTheBackupOrNever() {
    Trigger onTime = new Trigger.PulseWidth(1, 98, 0.013, Fires.ON_TIME);
    Trigger atEnd = new Trigger.PulseWidth(1, 98, 0.013, Fires.AT_END);
    Voltage back = gap(90, 20e-3, 0, 50);
    double loss = 0.1 + 0.005;
    assertEquals(loss + 0.013, onTime.firesAt(back, 0, 0.2, STEP_SECONDS).orElseThrow(), 2e-5);
    // back at 90 + 360 degrees, beyond the level
    assertEquals(loss + 0.020, atEnd.firesAt(back, 0, 0.2, STEP_SECONDS).orElseThrow(), 2e-5);
    Voltage never = gap(90, 10, 0, 50);
    assertTrue(onTime.firesAt(never, 0, 0.5, STEP_SECONDS).isPresent());
    assertFalse(atEnd.firesAt(never, 0, 0.5, STEP_SECONDS).isPresent());
  }

  @Test
  void edgeAndIntervalKnowTheirSlope() {
    Voltage falls = at -> at < 0.1 ? 5 : 0;
    assertTrue(new Trigger.Edge(3, 2.5, false).firesAt(falls, 0, 0.2, 1e-5).isPresent());
    assertFalse(new Trigger.Edge(3, 2.5, true).firesAt(falls, 0, 0.2, 1e-5).isPresent());
    Trigger next = new Trigger.Interval(1, 98, 0.021, Fires.AT_END);
    Voltage back = gap(10, 5e-3, 0, 50); // a rise is hidden: 20 ms and some to the return at 100
    assertEquals(0.1 + 100 / 18e3, next.firesAt(back, 0.05, 0.2, 1e-6).orElseThrow(), 1e-5);
  }

  private static boolean isUndecided(BlindZone zone, double start, double gap, double stepDegrees) {
    boolean here = zone.catches(start, gap, stepDegrees);
    return zone.catches(start - UNDECIDED_DEGREES, gap, stepDegrees) != here
        || zone.catches(start + UNDECIDED_DEGREES, gap, stepDegrees) != here
        || zone.catches(start, gap - UNDECIDED_SECONDS, stepDegrees) != here
        || zone.catches(start, gap + UNDECIDED_SECONDS, stepDegrees) != here;
  }

  private static boolean fires(
      Trigger trigger, double startDegrees, double gapSeconds, double stepDegrees, double hertz) {
    Voltage signal = gap(startDegrees, gapSeconds, stepDegrees, hertz);
    return trigger.firesAt(signal, 0, 0.1 + gapSeconds + 0.08, STEP_SECONDS).isPresent();
  }

  /** A sine, at 0 degrees at 0.1 s, that is gone from {@code startDegrees} on for a time. */
  private static Voltage gap(
      double startDegrees, double gapSeconds, double stepDegrees, double hertz) {
    double lost = 0.1 + startDegrees / 360 / hertz;
    return at -> {
      double step = at >= lost + gapSeconds ? Math.toRadians(stepDegrees) : 0;
      boolean gone = at >= lost && at < lost + gapSeconds;
      return gone ? 0 : PEAK_VOLTS * Math.sin(2 * Math.PI * hertz * (at - 0.1) + step);
    };
  }

  private static Trigger trigger(BlindZone zone) {
    double level = zone.levelPart() * PEAK_VOLTS;
    double seconds = zone.timeSeconds();
    return switch (zone.method()) {
      case TIME_OUT_TRIGGER -> new Trigger.TimeOut(1, level, seconds);
      case DROPOUT_TRIGGER, INTERVAL_TRIGGER ->
          new Trigger.Interval(1, level, seconds, Fires.ON_TIME);
      case PULSE_WIDTH_TRIGGER -> new Trigger.PulseWidth(1, level, seconds, Fires.ON_TIME);
      case WINDOW_TRIGGER -> new Trigger.Window(1, -level, level, seconds, Fires.ON_TIME);
      case EDGE_TRIGGER, EXTERNAL_TRIGGER, FORCED_RECORD, BACK_TO_BACK_RECORDS ->
          throw new IllegalArgumentException(zone.method().words());
    };
  }
}

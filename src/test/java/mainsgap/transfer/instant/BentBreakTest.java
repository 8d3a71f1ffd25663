package mainsgap.transfer.instant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.bank.CaptureKind;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.Measured;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BentBreakTest {
  /** In them the load leaves its supply by a few volts, over a crossing, and steps back. */
  @ParameterizedTest
  @ValueSource(longs = {368, 482, 607, 690, 779, 897})
  void makeOutOfABendIsTheReturn(long seed) {
    Measured measured = measured(Kind.DISCHARGING_BOUNCE, seed);

    assertEquals(truth(Kind.DISCHARGING_BOUNCE, seed), measured.transferMillis(), 0.02);
    assertTrue(measured.firstReturnSeconds() < measured.returnSeconds());
  }

  /** In them a make was located where the discharge passes its supply, before the last one. */
  @ParameterizedTest
  @ValueSource(longs = {256, 548, 817, 920})
  void passingTheSupplyIsNoMake(long seed) {
    double found = measured(Kind.DISCHARGING_BOUNCE, seed).transferMillis();

    assertEquals(truth(Kind.DISCHARGING_BOUNCE, seed), found, 0.03);
  }

  /** In them the output lies beside its fit, as its frequency goes on moving. */
  @ParameterizedTest
  @ValueSource(longs = {147, 410, 570, 669, 796})
  void walkingFromTheFitIsNoBreak(long seed) {
    double found = measured(Kind.WALKING_FREQUENCY, seed).transferMillis();

    assertEquals(truth(Kind.WALKING_FREQUENCY, seed), found, 0.06);
  }

  /** In it the last swing over a crossing looks like a discharge. */
  @ParameterizedTest
  @ValueSource(longs = 71)
  void lastSwingOfARingIsNoBreak(long seed) {
    double found = measured(Kind.LOW_PASS_AND_RING, seed).transferMillis();

    assertEquals(truth(Kind.LOW_PASS_AND_RING, seed), found, 0.02);
  }

  private static double truth(CaptureKind kind, long seed) {
    return kind.capture(seed).truth().transferMillis();
  }

  private static Measured measured(CaptureKind kind, long seed) {
    KnownCapture known = kind.capture(seed);
    return assertInstanceOf(
        Measured.class, TransferMeasurement.measure(known.capture(), known.task()));
  }
}

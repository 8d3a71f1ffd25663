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

class DischargedBreakTest {
  /** In them the last make lies at a crossing, and no sample before it at the residue. */
  @ParameterizedTest
  @ValueSource(longs = {12, 85, 160, 187, 221, 297})
  void makeOutOfADischargeIsTheReturn(long seed) {
    KnownCapture known = Kind.DISCHARGING_BOUNCE.capture(seed);

    Measured measured = measured(Kind.DISCHARGING_BOUNCE, seed);

    assertEquals(known.truth().transferMillis(), measured.transferMillis(), 0.1);
    assertTrue(measured.firstReturnSeconds() < measured.returnSeconds());
  }

  /** In them it lies before the crossing, or the discharge is so fast that no sample meets it. */
  @ParameterizedTest
  @ValueSource(longs = {42, 151, 187, 223, 744, 953})
  void makeOutOfAFastDischargeIsTold(long seed) {
    double truth = Kind.DISCHARGING_BOUNCE.capture(seed).truth().transferMillis();

    assertEquals(truth, measured(Kind.DISCHARGING_BOUNCE, seed).transferMillis(), 0.01);
  }

  /** In them the load leaves its supply by a few volts, over a crossing, and steps back. */
  @ParameterizedTest
  @ValueSource(longs = {368, 482, 607, 690, 779, 897})
  void makeOutOfABendIsTheReturn(long seed) {
    KnownCapture known = Kind.DISCHARGING_BOUNCE.capture(seed);

    Measured measured = measured(Kind.DISCHARGING_BOUNCE, seed);

    assertEquals(known.truth().transferMillis(), measured.transferMillis(), 0.02);
    assertTrue(measured.firstReturnSeconds() < measured.returnSeconds());
  }

  /** In them a make was located where the discharge passes its supply, before the last one. */
  @ParameterizedTest
  @ValueSource(longs = {256, 548, 817, 920})
  void passingTheSupplyIsNoMake(long seed) {
    double truth = Kind.DISCHARGING_BOUNCE.capture(seed).truth().transferMillis();

    assertEquals(truth, measured(Kind.DISCHARGING_BOUNCE, seed).transferMillis(), 0.03);
  }

  /** In them half a swing over a crossing looks like a discharge. */
  @ParameterizedTest
  @ValueSource(longs = {20, 46, 121, 150, 175, 239})
  void ringIsNoDischarge(long seed) {
    double truth = Kind.RINGING.capture(seed).truth().transferMillis();

    assertEquals(truth, measured(Kind.RINGING, seed).transferMillis(), 0.1);
  }

  private static Measured measured(CaptureKind kind, long seed) {
    KnownCapture known = kind.capture(seed);
    return assertInstanceOf(
        Measured.class, TransferMeasurement.measure(known.capture(), known.task()));
  }
}

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
    Measured measured = measuredWithin(0.1, Kind.DISCHARGING_BOUNCE, seed);

    assertTrue(measured.firstReturnSeconds() < measured.returnSeconds());
  }

  /** In them it lies before the crossing, or the discharge is so fast that no sample meets it. */
  @ParameterizedTest
  @ValueSource(longs = {42, 151, 187, 223, 744, 953})
  void makeOutOfAFastDischargeIsTold(long seed) {
    measuredWithin(0.01, Kind.DISCHARGING_BOUNCE, seed);
  }

  /** In them the load leaves its supply by a few volts, over a crossing, and steps back. */
  @ParameterizedTest
  @ValueSource(longs = {368, 482, 607, 690, 779, 897})
  void makeOutOfABendIsTheReturn(long seed) {
    Measured measured = measuredWithin(0.02, Kind.DISCHARGING_BOUNCE, seed);

    assertTrue(measured.firstReturnSeconds() < measured.returnSeconds());
  }

  /** In them a make was located where the discharge passes its supply, before the last one. */
  @ParameterizedTest
  @ValueSource(longs = {256, 548, 817, 920})
  void passingTheSupplyIsNoMake(long seed) {
    measuredWithin(0.03, Kind.DISCHARGING_BOUNCE, seed);
  }

  /** In them half a swing over a crossing looks like a discharge. */
  @ParameterizedTest
  @ValueSource(longs = {20, 46, 121, 150, 175, 239})
  void ringIsNoDischarge(long seed) {
    measuredWithin(0.1, Kind.RINGING, seed);
  }

  private static Measured measuredWithin(double millis, CaptureKind kind, long seed) {
    KnownCapture known = kind.capture(seed);
    Measured measured =
        assertInstanceOf(
            Measured.class, TransferMeasurement.measure(known.capture(), known.task()));
    assertEquals(known.truth().transferMillis(), measured.transferMillis(), millis);
    return measured;
  }
}

package mainsgap.transfer.instant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.Measured;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Returns near a crossing, which show no step, with steps later in the record. */
class LaterMakeTest {
  @ParameterizedTest
  @CsvSource({"SECOND_INTERRUPTION, 701, 1", "SECOND_INTERRUPTION, 719, 1", "FREE_RUNNING, 770, 0"})
  void stepLongAfterTheReturnIsNotTheReturn(Kind kind, long seed, int furtherInterruptions) {
    KnownCapture known = kind.capture(seed);

    Measured measured =
        assertInstanceOf(
            Measured.class, TransferMeasurement.measure(known.capture(), known.task()));

    assertEquals(known.truth().transferMillis(), measured.transferMillis(), 0.1);
    assertEquals(furtherInterruptions, measured.furtherInterruptions().count());
  }

  /**
   * The output rings past the residue on its way, and lies still there nowhere; the top of a ring
   * may lie along the supply before.
   */
  @ParameterizedTest
  @ValueSource(longs = {145, 691})
  void ringThroughTheResidueIsNoBreak(long seed) {
    KnownCapture known = Kind.LOW_PASS_AND_RING.capture(seed);

    Measured measured =
        assertInstanceOf(
            Measured.class, TransferMeasurement.measure(known.capture(), known.task()));

    assertEquals(known.truth().transferMillis(), measured.transferMillis(), 0.02);
  }

  /** What is left on the load crosses the supply after before the load is dead for 57 ms. */
  @Test
  void longBreakBehindACrossingIsNoShapeOfTheSupply() {
    KnownCapture known = Kind.NOISY.capture(496);

    Measured measured =
        assertInstanceOf(
            Measured.class, TransferMeasurement.measure(known.capture(), known.task()));

    assertEquals(known.truth().transferMillis(), measured.transferMillis(), 0.01);
  }
}

package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordStepsTest {
  private static final List<Integer> LENGTHS = List.of(1000, 10_000, 100_000);
  private static final double EXACT = 1e-15;

  /** Never shorter than planned, before the trigger as planned; computed by hand. */
  @ParameterizedTest
  @CsvSource({
    "0.00002, 17350, true, 100000, 0.000005", // 34.7 ms a division of ten becomes 50 ms
    "0.00002, 10000, true, 10000, 0.00002",
    "0.00002, 17350, false, 100000, 0.00000347",
    "0.0001, 900, true, 1000, 0.0001",
  })
  void theNextRecordOnOfferIsSet(
      double interval, int samples, boolean oneTwoFive, int offered, double itsInterval) {
    AppliedRecord record =
        new RecordSteps(LENGTHS, oneTwoFive)
            .fitting(new AppliedRecord(interval, samples, -0.1), 10);
    assertEquals(offered, record.samples());
    assertEquals(itsInterval, record.intervalSeconds(), EXACT);
    assertEquals(-0.1, record.firstSampleSeconds());
  }

  @Test
  void aFamilyWithoutStepsIsSetAsPlanned() {
    AppliedRecord wished = new AppliedRecord(2e-5, 17_350, -0.1);
    assertEquals(wished, new RecordSteps(List.of(), false).fitting(wished, 0));
  }

  @Test
  void aRecordLongerThanAllOnOfferIsRefused() {
    RecordSteps steps = new RecordSteps(LENGTHS, false);
    AppliedRecord wished = new AppliedRecord(2e-5, 100_001, 0);
    ScopeException refused = assertThrows(ScopeException.class, () -> steps.fitting(wished, 10));
    assertEquals(
        "a record of 100001 samples was planned, the longest on offer has 100000: set"
            + " 'limits.largest-record-samples' in the profile to that",
        refused.getMessage());
  }
}

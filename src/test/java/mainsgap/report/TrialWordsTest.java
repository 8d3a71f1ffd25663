package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class TrialWordsTest {
  private static final DeclaredClaim CLAIM = DeclaredClaim.ofMillis(20, "20 ms");

  private static TrialWords words(
      Outcome outcome, @Nullable DeclaredClaim claim, @Nullable String setAside) {
    return TrialWords.of(InventedSessions.trial(1, outcome, claim, setAside));
  }

  @Test
  void passedTrialHasItsTimeAndNoRemark() {
    TrialWords words = words(InventedSessions.measured(8.1234, 5), CLAIM, null);
    assertEquals(new TrialWords("8.123 ms", "8.123 ± 0.040 ms", "PASS", "90°", "5 %", ""), words);
  }

  @Test
  void trialWithoutAReturnSaysHowLongAtLeast() {
    TrialWords words = words(InventedSessions.noReturn(780), null, null);
    assertEquals("at least 780.00 ± 0.10 ms", words.statedTime());
    assertEquals("not judged", words.result());
    assertEquals("-", words.residual());
  }

  @Test
  void failedTrialSaysWhy() {
    TrialWords words = words(InventedSessions.measured(25, 5), CLAIM, null);
    assertEquals("FAIL", words.result());
    assertEquals(
        InventedSessions.trial(1, InventedSessions.measured(25, 5), CLAIM, null).verdictReason(),
        words.remark());
  }

  @Test
  void refusedTrialSaysWhatToChange() {
    TrialWords words = words(InventedSessions.refused(), CLAIM, null);
    assertEquals("-", words.statedTime());
    assertEquals("refused", words.result());
    assertEquals("-", words.angle());
    assertEquals(InventedSessions.refused().sentence(), words.remark());
  }

  @Test
  void trialThatWasSetAsideSaysSoWhateverItWas() {
    TrialWords words = words(InventedSessions.measured(8, 5), CLAIM, "the lead slipped");
    assertEquals("set aside", words.result());
    assertEquals("the lead slipped", words.remark());
  }

  @Test
  void noInterruptionIsToldByWhatWouldHaveBeenSeen() {
    assertEquals(
        "no gap over 0.25 ms", words(InventedSessions.noInterruption(), CLAIM, null).statedTime());
  }
}

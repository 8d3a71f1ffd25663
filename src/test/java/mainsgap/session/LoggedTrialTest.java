package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LoggedTrialTest {

  @Test
  void figuresThatTellNoOutcomeAreAFaultOfTheSession() {
    LoggedTrial trial =
        new LoggedTrial(
            3,
            Instant.EPOCH,
            Map.of("outcome", "measured"),
            null,
            "8 ms",
            null,
            null,
            List.of(),
            null,
            "seal");
    assertEquals(
        "trial 3 does not fit: the stored figures have no event",
        assertThrows(SessionException.class, trial::outcome).getMessage());
  }
}

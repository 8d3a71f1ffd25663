package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class RecheckTest {
  private final Map<String, @Nullable Object> logged = new LinkedHashMap<>();
  private final Map<String, @Nullable Object> measured = new LinkedHashMap<>();

  RecheckTest() {
    logged.put("outcome", "measured");
    logged.put("transferTimeMs", 8.41678);
    logged.put("furtherInterruptions", 0);
    logged.put("recoveryTimeMs", null);
    measured.putAll(logged);
  }

  @Test
  void theSameFiguresDoNotDiffer() {
    measured.put("furtherInterruptions", 0L);
    measured.put("transferTimeMs", Math.nextUp(8.41678));
    assertEquals(List.of(), Recheck.between(1, logged, measured));
  }

  @Test
  void eachFigureThatDiffersIsNamedWithBothValues() {
    measured.put("transferTimeMs", 8.41679);
    measured.put("recoveryTimeMs", 12.0);
    assertEquals(
        List.of(
            new Recheck.Difference(4, "transferTimeMs", 8.41678, 8.41679),
            new Recheck.Difference(4, "recoveryTimeMs", null, 12.0)),
        Recheck.between(4, logged, measured));
  }

  @Test
  void aFigureThatTheSessionDoesNotKnowYetIsNotCompared() {
    measured.put("restrikes", 2);
    assertEquals(List.of(), Recheck.between(1, logged, measured));
  }
}

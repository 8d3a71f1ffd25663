package mainsgap.arming;

import static mainsgap.arming.LoopState.ANALYSED;
import static mainsgap.arming.LoopState.ARMED;
import static mainsgap.arming.LoopState.COMPLETE;
import static mainsgap.arming.LoopState.FAULTED;
import static mainsgap.arming.LoopState.LOGGED;
import static mainsgap.arming.LoopState.PREFLIGHT;
import static mainsgap.arming.LoopState.READING;
import static mainsgap.arming.LoopState.RECOVERING;
import static mainsgap.arming.LoopState.STOPPED;
import static mainsgap.arming.LoopState.TRIGGERED;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LoopStateTest {
  /** The bench procedure, written down a second time: from each state, where it goes on. */
  private static final Map<LoopState, Set<LoopState>> PROCEDURE =
      Map.of(
          PREFLIGHT, Set.of(ARMED, RECOVERING),
          ARMED, Set.of(TRIGGERED, RECOVERING, COMPLETE),
          TRIGGERED, Set.of(READING),
          READING, Set.of(ANALYSED),
          ANALYSED, Set.of(LOGGED),
          LOGGED, Set.of(RECOVERING, COMPLETE),
          RECOVERING, Set.of(ARMED),
          COMPLETE, Set.of(),
          STOPPED, Set.of(),
          FAULTED, Set.of());

  private static final Set<LoopState> ENDS = EnumSet.of(COMPLETE, STOPPED, FAULTED);

  /** A capture that was read is kept before a stop is heeded. */
  private static final Set<LoopState> DEAF_TO_STOP = EnumSet.of(READING, ANALYSED);

  @ParameterizedTest
  @EnumSource
  void leadsWhereTheProcedureGoesAndNowhereElse(LoopState from) {
    for (LoopState to : LoopState.values()) {
      boolean expected =
          PROCEDURE.getOrDefault(from, Set.of()).contains(to)
              || (to == FAULTED && !ENDS.contains(from))
              || (to == STOPPED && !ENDS.contains(from) && !DEAF_TO_STOP.contains(from));
      assertEquals(expected, from.mayLeadTo(to), from + " -> " + to);
    }
  }

  @ParameterizedTest
  @EnumSource
  void saysInOneLineWhatIsTrueOnTheBench(LoopState state) {
    assertEquals(1, state.truth().lines().count());
    assertEquals(ENDS.contains(state), state.isEnd());
  }
}

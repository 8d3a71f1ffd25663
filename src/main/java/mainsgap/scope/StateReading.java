package mainsgap.scope;

import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/** Asks once for the state in the profile's way. */
final class StateReading {
  private static final String STEP = "asking for the state";

  private final Exchange exchange;
  private final StatePolling polling;

  StateReading(Exchange exchange, StatePolling polling) {
    this.exchange = exchange;
    this.polling = polling;
  }

  AcquisitionState ask() {
    if (polling instanceof StatePolling.ByWords byWords) {
      return ofWord(byWords);
    }
    return ofBits((StatePolling.ByBits) polling);
  }

  private AcquisitionState ofWord(StatePolling.ByWords byWords) {
    String answer = exchange.ask(STEP, byWords.query());
    AcquisitionState state = byWords.words().get(answer.strip().toUpperCase(Locale.ROOT));
    if (state == null) {
      throw new ScopeException(
          "the instrument answered '"
              + answer
              + "' to "
              + byWords.query()
              + "; its profile knows "
              + String.join(", ", new TreeSet<>(byWords.words().keySet())));
    }
    return state;
  }

  private AcquisitionState ofBits(StatePolling.ByBits byBits) {
    double answer = exchange.askNumber(STEP, byBits.query(), Map.of());
    if (!(answer >= 0 && answer < 1L << 32 && answer == Math.rint(answer))) {
      throw new ScopeException(
          "the instrument answered "
              + answer
              + " to "
              + byBits.query()
              + ", expected a register of whole bits");
    }
    long register = (long) answer;
    return byBits.bits().stream()
        .filter(bit -> (register >> bit.number() & 1) == 1)
        .map(StatePolling.Bit::means)
        .findFirst()
        .orElse(AcquisitionState.IDLE);
  }
}

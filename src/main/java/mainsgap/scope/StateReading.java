package mainsgap.scope;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import mainsgap.scope.StatePolling.ByBits;
import mainsgap.scope.StatePolling.ByWords;
import mainsgap.scope.StatePolling.Question;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Asks for the state in the profile's way. Owned by the instrument's thread. */
final class StateReading {
  private static final Logger LOG = LoggerFactory.getLogger(StateReading.class);
  private static final String STEP = "asking for the state";

  private final Exchange exchange;
  private final StatePolling polling;

  /** What registers that reading clears have said since the acquisition began. */
  private final Map<Question, Long> remembered = new HashMap<>();

  private boolean completedSinceStart;

  StateReading(Exchange exchange, StatePolling polling) {
    this.exchange = exchange;
    this.polling = polling;
  }

  /** Before an acquisition is started: what registers remember belongs to an earlier one. */
  void begin() {
    remembered.clear();
    completedSinceStart = false;
    for (Question question : polling.questions()) {
      if (question instanceof ByBits register && register.clearsWhenRead()) {
        long old = register(register);
        LOG.debug("{} said {} before the start", register.query(), old);
      }
    }
  }

  /** Whether a register, cleared before the start, has said that a record is whole. */
  boolean completedSinceStart() {
    return completedSinceStart;
  }

  AcquisitionState ask() {
    for (Question question : polling.questions()) {
      Optional<AcquisitionState> state = ask(question);
      if (state.isPresent()) {
        return state.get();
      }
    }
    return polling.otherwise();
  }

  private Optional<AcquisitionState> ask(Question question) {
    if (question instanceof ByWords byWords) {
      return Optional.of(ofWord(byWords));
    }
    return ofBits((ByBits) question);
  }

  private AcquisitionState ofWord(ByWords byWords) {
    String answer = exchange.ask(STEP, byWords.query(), Map.of());
    AcquisitionState state = byWords.words().get(Answers.bare(answer).toUpperCase(Locale.ROOT));
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

  private Optional<AcquisitionState> ofBits(ByBits byBits) {
    long register = register(byBits);
    if (!byBits.clearsWhenRead()) {
      return byBits.meaning(register);
    }
    long since = remembered.merge(byBits, register, (old, now) -> old | now);
    Optional<AcquisitionState> state = byBits.meaning(since);
    completedSinceStart |= state.equals(Optional.of(AcquisitionState.COMPLETE));
    return state;
  }

  private long register(ByBits byBits) {
    double answer = exchange.askNumber(STEP, byBits.query(), Map.of());
    if (!(answer >= 0 && answer < 1L << 32 && answer == Math.rint(answer))) {
      throw new ScopeException(
          "the instrument answered "
              + answer
              + " to "
              + byBits.query()
              + ", expected a register of whole bits");
    }
    return (long) answer;
  }
}

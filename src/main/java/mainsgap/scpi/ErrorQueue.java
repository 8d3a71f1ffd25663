package mainsgap.scpi;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The instrument's error queue, and the messages that may have filled it. */
final class ErrorQueue {
  static final String NEXT = ":SYST:ERR?";

  private static final Logger LOG = LoggerFactory.getLogger(ErrorQueue.class);
  private static final int MOST_ENTRIES = 32;
  private static final int MOST_MESSAGES = 16;

  private final Conversation conversation;
  private final String resource;
  private final List<String> sinceCheck = new ArrayList<>();

  /** Outlives a reading that breaks off: what the instrument gave away once is not lost. */
  private final List<InstrumentError> unreported = new ArrayList<>();

  ErrorQueue(Conversation conversation, String resource) {
    this.conversation = conversation;
    this.resource = resource;
  }

  void remember(String message) {
    if (sinceCheck.size() == MOST_MESSAGES) {
      sinceCheck.remove(0);
    }
    sinceCheck.add(message);
  }

  void forget() {
    sinceCheck.clear();
    unreported.clear();
  }

  /** Empties the queue; what it held, if that was a fault. */
  Optional<InstrumentComplaint> complaint() {
    readToItsEnd();
    Optional<InstrumentComplaint> complaint =
        unreported.isEmpty()
            ? Optional.empty()
            : Optional.of(new InstrumentComplaint(resource, unreported, sinceCheck));
    forget();
    return complaint;
  }

  private void readToItsEnd() {
    for (int i = 0; i < MOST_ENTRIES; i++) {
      InstrumentError error = InstrumentError.parse(conversation.line(NEXT));
      if (error.number() == 0) {
        return;
      }
      if (error.isFault()) {
        unreported.add(error);
      }
    }
    LOG.warn("{}: its error queue did not end after {} entries", resource, MOST_ENTRIES);
  }
}

package mainsgap.scpi;

import java.util.List;
import java.util.stream.Collectors;

/** The instrument put errors into its queue: what it said, after which messages, what to try. */
public final class InstrumentComplaint extends ScpiException {
  private static final long serialVersionUID = 1L;

  private static final int MOST_QUOTED = 4;

  private final transient List<InstrumentError> errors;

  /**
   * Creates the complaint.
   *
   * @param errors at least one, oldest first
   * @param messages what was sent since the queue was last seen empty
   */
  InstrumentComplaint(String resource, List<InstrumentError> errors, List<String> messages) {
    super(sentence(resource, errors, messages));
    this.errors = List.copyOf(errors);
  }

  /** What the instrument said, oldest first. */
  public List<InstrumentError> errors() {
    return errors;
  }

  private static String sentence(
      String resource, List<InstrumentError> errors, List<String> messages) {
    String said = errors.stream().map(InstrumentError::toString).collect(Collectors.joining(", "));
    return resource
        + " reports error "
        + said
        + " after "
        + quoted(messages)
        + ": "
        + ErrorAdvice.of(errors.get(0).number());
  }

  private static String quoted(List<String> messages) {
    if (messages.isEmpty()) {
      return "an earlier command";
    }
    if (messages.size() > MOST_QUOTED) {
      String first = messages.get(0);
      String last = messages.get(messages.size() - 1);
      return "one of " + messages.size() + " messages from '" + first + "' to '" + last + "'";
    }
    String all = messages.stream().map(m -> "'" + m + "'").collect(Collectors.joining(", "));
    return messages.size() == 1 ? all : "one of " + all;
  }
}

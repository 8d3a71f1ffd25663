package mainsgap.scpi;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import mainsgap.link.Link;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Messages out and replies in, one at a time, as they come: what goes wrong is for the caller to
 * put right. Owned by one instrument's thread.
 */
final class Conversation {
  private static final Logger LOG = LoggerFactory.getLogger(Conversation.class);

  private final Link link;
  private final ScpiOptions options;
  private final Clock clock;
  private final ReplyReader reader;
  private Deadline nextMessageFrom;

  Conversation(Link link, ScpiOptions options, Clock clock) {
    this.link = link;
    this.options = options;
    this.clock = clock;
    this.reader = new ReplyReader(link, options, clock);
    this.nextMessageFrom = Deadline.after(Duration.ZERO, clock);
  }

  void send(String message) {
    if (!message.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      throw new IllegalArgumentException("a message is one line of printable ASCII: " + message);
    }
    rest();
    reader.begin();
    LOG.debug("{} > {}", link.resource(), message);
    byte[] bytes = (message + options.terminator()).getBytes(StandardCharsets.US_ASCII);
    link.write(bytes, Deadline.after(options.replyTimeout(), clock));
    nextMessageFrom = Deadline.after(options.commandGap(), clock);
  }

  String line(String query) {
    send(query);
    String line = reader.line();
    LOG.debug("{} < {}", link.resource(), line);
    return line;
  }

  /** Asks for a reply that may be as long as a record is. */
  String longLine(String query, int atMostBytes) {
    send(query);
    String line = reader.longLine(atMostBytes);
    LOG.debug("{} < line of {} characters", link.resource(), line.length());
    return line;
  }

  byte[] block(String query, int atMostBytes) {
    send(query);
    byte[] data = reader.block(atMostBytes);
    LOG.debug("{} < block of {} bytes", link.resource(), data.length);
    return data;
  }

  /** How far the last reply came, for a sentence. */
  String progress() {
    return reader.progress();
  }

  /** Device clear: nothing said before can be answered any more. */
  void clear() {
    LOG.debug("{} cleared", link.resource());
    link.clear(Deadline.after(options.clearTimeout(), clock));
    reader.cleared();
  }

  private void rest() {
    if (nextMessageFrom.hasPassed()) {
      return;
    }
    try {
      clock.pause(nextMessageFrom.remaining(), new StopRequest());
    } catch (StoppedException e) {
      // an interrupt only cuts the rest short: what makes the instrument safe must still go out
      LOG.debug("{}: the gap between messages was cut short", link.resource());
    }
  }
}

package mainsgap.scpi;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import mainsgap.link.Link;
import mainsgap.link.LinkClosedException;
import mainsgap.link.LinkException;
import mainsgap.link.LinkOpener;
import mainsgap.link.LinkTimeoutException;
import mainsgap.link.ResourceName;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;

/**
 * An instrument that speaks IEEE 488.2 and SCPI-1999. One query is outstanding at a time and is
 * read to its end. One thread owns it; only {@link #close()} may come from another.
 *
 * <p>Every call ends within its time-out. A fault of the link is a {@link LinkException}; a reply
 * that is missing or makes no sense is a {@link ScpiException}, after which the link has been
 * cleared and may be used again.
 */
public final class ScpiInstrument implements AutoCloseable {
  private final Link link;
  private final ScpiOptions options;
  private final Conversation conversation;
  private final ErrorQueue errors;

  /** Takes over the link, which {@link #close()} closes. */
  public ScpiInstrument(Link link, ScpiOptions options, Clock clock) {
    this.link = link;
    this.options = options;
    this.conversation = new Conversation(link, options, clock);
    this.errors = new ErrorQueue(conversation, link.resource().toString());
  }

  /** Opens the link to an instrument. */
  public static ScpiInstrument open(ResourceName resource, ScpiOptions options, Clock clock) {
    return open(resource, LinkOpener.PLAIN, options, clock);
  }

  /** Opens the link to an instrument in a way of one's own. */
  public static ScpiInstrument open(
      ResourceName resource, LinkOpener links, ScpiOptions options, Clock clock) {
    Link link = links.open(resource, Deadline.after(options.connectTimeout(), clock));
    return new ScpiInstrument(link, options, clock);
  }

  /** Where the instrument is. */
  public ResourceName resource() {
    return link.resource();
  }

  /** Sends a message that has no reply. */
  public void command(String message) {
    errors.remember(message);
    conversation.send(message);
  }

  /** Asks, and gives the line of the reply without its end. */
  public String query(String message) {
    errors.remember(message);
    return recovering(message, () -> conversation.line(message));
  }

  /** Asks for one number: NaN and the infinities of SCPI are those of Java. */
  public double queryNumber(String message) {
    String reply = query(message);
    return number(message, reply, reply);
  }

  /** Asks for numbers separated by commas. */
  public double[] queryNumbers(String message) {
    String reply = query(message);
    return Stream.of(reply.split(",", -1))
        .mapToDouble(field -> number(message, field, reply))
        .toArray();
  }

  /**
   * Asks for a record as text: numbers separated by commas, which may stand in a block.
   *
   * @param atMost how many were planned: a reply that cannot be of so many is refused
   */
  public double[] queryRecord(String message, int atMost) {
    errors.remember(message);
    long bytes = (long) atMost * NumberText.LONGEST_NUMBER + NumberText.LONGEST_HEADER;
    return recovering(
        message,
        () ->
            NumberText.parse(
                conversation.longLine(message, (int) Math.min(bytes, Integer.MAX_VALUE - 8))));
  }

  /**
   * Asks for a block of data.
   *
   * @param atMostBytes what was planned: a header that claims more is refused, nothing allocated
   */
  public byte[] queryBlock(String message, int atMostBytes) {
    errors.remember(message);
    return recovering(message, () -> conversation.block(message, atMostBytes));
  }

  /** Asks who it is ({@code *IDN?}); a field that it leaves out is 'unknown', a serial '0'. */
  public Identity identity() {
    String[] fields = query("*IDN?").split(",", 4);
    return new Identity(
        field(fields, 0, "unknown"),
        field(fields, 1, "unknown"),
        field(fields, 2, "0"),
        field(fields, 3, "unknown"));
  }

  /** Clears the event registers and the error queue ({@code *CLS}). */
  public void clearStatus() {
    command("*CLS");
    errors.forget();
  }

  /** Empties the error queue, oldest first; mere events are left out. */
  public List<InstrumentError> drainErrors() {
    return complaint().map(InstrumentComplaint::errors).orElse(List.of());
  }

  /**
   * Empties the error queue after a step.
   *
   * @throws InstrumentComplaint where it held a fault
   */
  public void checkErrors() {
    complaint()
        .ifPresent(
            complaint -> {
              throw complaint;
            });
  }

  /** Puts both sides in step again (device clear): for an instrument that broke off. */
  public void clear() {
    conversation.clear();
  }

  /** Closes the link. Never throws. */
  @Override
  public void close() {
    link.close();
  }

  private Optional<InstrumentComplaint> complaint() {
    return recovering(ErrorQueue.NEXT, errors::complaint);
  }

  /** Runs one exchange; whatever goes wrong in it leaves the two sides in step again. */
  private <T> T recovering(String message, Supplier<T> exchange) {
    try {
      return exchange.get();
    } catch (LinkTimeoutException e) {
      throw afterSilence(message, e);
    } catch (LinkClosedException e) {
      String progress = conversation.progress();
      throw new LinkClosedException(
          "the reply to '" + message + "' broke off " + progress + ": " + e.getMessage(), e);
    } catch (ScpiException e) {
      ScpiException told =
          new ScpiException(
              resource() + ", asked '" + message + "', gave no usable reply: " + e.getMessage(), e);
      clearAfter(told);
      throw told;
    }
  }

  /** Many instruments meet a command that they don't know with silence: their queue says why. */
  private ScpiException afterSilence(String message, LinkTimeoutException silence) {
    ScpiException told =
        new ReplyTimeoutException(
            resource()
                + " gave no whole reply to '"
                + message
                + "' within "
                + options.replyTimeout().toMillis()
                + " ms ("
                + conversation.progress()
                + "): it may be busy, or not know the command; check the profile or allow more time",
            silence);
    if (!clearAfter(told) || message.equals(ErrorQueue.NEXT)) {
      return told;
    }
    try {
      Optional<InstrumentComplaint> complaint = errors.complaint();
      complaint.ifPresent(known -> known.addSuppressed(told));
      return complaint.isPresent() ? complaint.get() : told;
    } catch (LinkException | ScpiException e) {
      told.addSuppressed(e);
      clearAfter(told);
      return told;
    }
  }

  private boolean clearAfter(ScpiException fault) {
    try {
      conversation.clear();
      return true;
    } catch (LinkException e) {
      fault.addSuppressed(e);
      return false;
    }
  }

  private double number(String message, String field, String reply) {
    try {
      return ScpiNumber.parse(field);
    } catch (NumberFormatException e) {
      throw new ScpiException(
          resource()
              + " answered '"
              + reply
              + "' to '"
              + message
              + "' where a number should be; check that the profile fits the instrument",
          e);
    }
  }

  private static String field(String[] fields, int index, String absent) {
    return index < fields.length && !fields[index].isBlank() ? fields[index].strip() : absent;
  }
}

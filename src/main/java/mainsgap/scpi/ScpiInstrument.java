package mainsgap.scpi;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import mainsgap.link.Link;
import mainsgap.link.LinkClosedException;
import mainsgap.link.LinkException;
import mainsgap.link.LinkTimeoutException;
import mainsgap.link.ResourceName;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An instrument that speaks IEEE 488.2 and SCPI-1999. One query is outstanding at a time and is
 * read to its end. One thread owns it; only {@link #close()} may come from another.
 *
 * <p>Every call ends within its time-out. A fault of the link is a {@link LinkException}; a reply
 * that is missing or makes no sense is a {@link ScpiException}, after which the link has been
 * cleared and may be used again.
 */
public final class ScpiInstrument implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ScpiInstrument.class);
  private static final String NEXT_ERROR = ":SYST:ERR?";
  private static final int MOST_ERRORS = 32;
  private static final int MOST_MESSAGES_REMEMBERED = 16;

  private final Link link;
  private final ScpiOptions options;
  private final Clock clock;
  private final ReplyReader reader;
  private final List<String> sinceCheck = new ArrayList<>();
  private Deadline nextMessageFrom;

  /** Takes over the link, which {@link #close()} closes. */
  public ScpiInstrument(Link link, ScpiOptions options, Clock clock) {
    this.link = link;
    this.options = options;
    this.clock = clock;
    this.reader = new ReplyReader(link, options, clock);
    this.nextMessageFrom = Deadline.after(Duration.ZERO, clock);
  }

  /** Opens the link to an instrument. */
  public static ScpiInstrument open(ResourceName resource, ScpiOptions options, Clock clock) {
    Link link = resource.open(Deadline.after(options.connectTimeout(), clock));
    return new ScpiInstrument(link, options, clock);
  }

  /** Where the instrument is. */
  public ResourceName resource() {
    return link.resource();
  }

  /** Sends a message that has no reply. */
  public void command(String message) {
    remember(message);
    send(message);
  }

  /** Sends a message without a reply, then {@link #checkErrors()}. */
  public void checkedCommand(String message) {
    command(message);
    checkErrors();
  }

  /** Asks, and gives the line of the reply without its end. */
  public String query(String message) {
    remember(message);
    return recovering(message, () -> askLine(message));
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
   * Asks for a block of data.
   *
   * @param atMostBytes what was planned: a header that claims more is refused, nothing allocated
   */
  public byte[] queryBlock(String message, int atMostBytes) {
    remember(message);
    return recovering(
        message,
        () -> {
          send(message);
          byte[] data = reader.block(atMostBytes);
          LOG.debug("{} < block of {} bytes", resource(), data.length);
          return data;
        });
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
    sinceCheck.clear();
  }

  /** Waits until the commands sent are done ({@code *OPC?}); never for a trigger. */
  public void operationComplete() {
    double reply = queryNumber("*OPC?");
    if (reply != 1) {
      throw new ScpiException(resource() + " answered " + reply + " to '*OPC?' where 1 should be");
    }
  }

  /** Reads and so clears the standard event register ({@code *ESR?}). */
  public int eventStatus() {
    return register("*ESR?");
  }

  /** Reads the status byte ({@code *STB?}). */
  public int statusByte() {
    return register("*STB?");
  }

  /** Empties the error queue, oldest first; mere events are left out. */
  public List<InstrumentError> drainErrors() {
    List<InstrumentError> errors = recovering(NEXT_ERROR, this::readErrors);
    sinceCheck.clear();
    return errors;
  }

  /**
   * Empties the error queue after a step.
   *
   * @throws InstrumentComplaint where it held a fault
   */
  public void checkErrors() {
    List<InstrumentError> errors = recovering(NEXT_ERROR, this::readErrors);
    if (!errors.isEmpty()) {
      throw complaint(errors);
    }
    sinceCheck.clear();
  }

  /** Throws away all that is under way between here and the instrument. */
  public void deviceClear() {
    link.clear(Deadline.after(options.connectTimeout(), clock));
    reader.cleared();
  }

  /** Closes the link. Never throws. */
  @Override
  public void close() {
    link.close();
  }

  private void send(String message) {
    byte[] bytes = (message + options.terminator()).getBytes(StandardCharsets.US_ASCII);
    rest();
    reader.begin();
    LOG.debug("{} > {}", resource(), message);
    link.write(bytes, Deadline.after(options.replyTimeout(), clock));
    nextMessageFrom = Deadline.after(options.commandGap(), clock);
  }

  private void rest() {
    if (nextMessageFrom.hasPassed()) {
      return;
    }
    try {
      clock.pause(nextMessageFrom.remaining(), new StopRequest());
    } catch (StoppedException e) {
      // an interrupt only cuts the rest short: what makes the instrument safe must still go out
      LOG.debug("{}: the gap between messages was cut short", resource());
    }
  }

  private String askLine(String message) {
    send(message);
    String line = reader.line();
    LOG.debug("{} < {}", resource(), line);
    return line;
  }

  private List<InstrumentError> readErrors() {
    List<InstrumentError> faults = new ArrayList<>();
    for (int i = 0; i < MOST_ERRORS; i++) {
      InstrumentError error = InstrumentError.parse(askLine(NEXT_ERROR));
      if (error.number() == 0) {
        return faults;
      }
      if (error.isFault()) {
        faults.add(error);
      }
    }
    LOG.warn("{}: its error queue did not end after {} entries", resource(), MOST_ERRORS);
    return faults;
  }

  /** Runs one exchange; whatever goes wrong in it leaves the two sides in step again. */
  private <T> T recovering(String message, Supplier<T> exchange) {
    try {
      return exchange.get();
    } catch (LinkTimeoutException e) {
      throw afterSilence(message, e);
    } catch (LinkClosedException e) {
      String progress = reader.progress();
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
                + reader.progress()
                + "): it may be busy, or not know the command; check the profile or allow more time",
            silence);
    if (!clearAfter(told) || message.equals(NEXT_ERROR)) {
      return told;
    }
    try {
      List<InstrumentError> errors = readErrors();
      return errors.isEmpty() ? told : complaint(errors);
    } catch (LinkException | ScpiException e) {
      told.addSuppressed(e);
      clearAfter(told);
      return told;
    }
  }

  private boolean clearAfter(ScpiException fault) {
    try {
      deviceClear();
      return true;
    } catch (LinkException e) {
      fault.addSuppressed(e);
      return false;
    }
  }

  private InstrumentComplaint complaint(List<InstrumentError> errors) {
    InstrumentComplaint complaint =
        new InstrumentComplaint(resource().toString(), errors, sinceCheck);
    sinceCheck.clear();
    return complaint;
  }

  private void remember(String message) {
    if (!message.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      throw new IllegalArgumentException("a message is one line of printable ASCII: " + message);
    }
    if (sinceCheck.size() == MOST_MESSAGES_REMEMBERED) {
      sinceCheck.remove(0);
    }
    sinceCheck.add(message);
  }

  private int register(String message) {
    double value = queryNumber(message);
    if (!(value >= 0 && value <= 255)) {
      throw new ScpiException(
          resource() + " answered " + value + " to '" + message + "' where 0 to 255 should be");
    }
    return (int) value;
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

package mainsgap.scope;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;
import mainsgap.link.LinkException;
import mainsgap.scpi.ReplyTimeoutException;
import mainsgap.scpi.ScpiException;
import mainsgap.scpi.ScpiInstrument;

/**
 * The profile's templates over the wire, in steps with a name: what goes wrong below becomes a
 * {@link ScopeException} that says in which step.
 */
final class Exchange {
  private static final String ERROR_QUEUE = ":SYST:ERR?";

  private final ScpiInstrument instrument;
  private final Consumer<Exchanged> listener;

  Exchange(ScpiInstrument instrument) {
    this(instrument, exchanged -> {});
  }

  /** Tells {@code listener} of each message once it is through. */
  Exchange(ScpiInstrument instrument, Consumer<Exchanged> listener) {
    this.instrument = instrument;
    this.listener = listener;
  }

  /** Forgets old complaints. */
  void clearStatus(String step) {
    in(
        step,
        () -> {
          instrument.clearStatus();
          listener.accept(new Exchanged(step, "", "*CLS", ""));
          return true;
        });
  }

  /** Closes the link. Never throws. */
  void close() {
    instrument.close();
  }

  /** Sends the commands; whether it took them shows in what it answers next. */
  void tell(String step, List<CommandTemplate> commands, Map<Placeholder, Double> values) {
    in(
        step,
        () -> {
          commands.forEach(command -> command(step, command, values));
          return true;
        });
  }

  /** Sends the commands, then lets the instrument complain. */
  void send(String step, List<CommandTemplate> commands, Map<Placeholder, Double> values) {
    in(
        step,
        () -> {
          commands.forEach(command -> command(step, command, values));
          checkQueue(step);
          return true;
        });
  }

  /** Lets the instrument complain of what it was told before. */
  void checkErrors(String step) {
    in(
        step,
        () -> {
          checkQueue(step);
          return true;
        });
  }

  String ask(String step, CommandTemplate query, Map<Placeholder, Double> values) {
    return in(
        step,
        () -> {
          String sent = query.filled(values);
          String reply = instrument.query(sent);
          listener.accept(new Exchanged(step, query.key(), sent, reply));
          return reply;
        });
  }

  double askNumber(String step, CommandTemplate query, Map<Placeholder, Double> values) {
    return in(
        step,
        () -> {
          String sent = query.filled(values);
          double number = instrument.queryNumber(sent);
          listener.accept(new Exchanged(step, query.key(), sent, Words.plain(number, 9)));
          return number;
        });
  }

  double[] askNumbers(String step, CommandTemplate query, Map<Placeholder, Double> values) {
    return in(
        step,
        () -> {
          String sent = query.filled(values);
          double[] numbers = instrument.queryNumbers(sent);
          listener.accept(new Exchanged(step, query.key(), sent, Exchanged.list(numbers)));
          return numbers;
        });
  }

  /**
   * Asks for a part of a record as a block of bytes.
   *
   * @throws ReplyTimeoutException if the block did not come in time: less may come
   */
  byte[] askBlock(
      String step, CommandTemplate query, Map<Placeholder, Double> values, int mostBytes) {
    return part(
        step,
        () -> {
          String sent = query.filled(values);
          byte[] block = instrument.queryBlock(sent, mostBytes);
          listener.accept(
              new Exchanged(step, query.key(), sent, "a block of " + block.length + " bytes"));
          return block;
        });
  }

  /**
   * Asks for a part of a record as text.
   *
   * @throws ReplyTimeoutException if it did not come in time: less may come
   */
  double[] askText(
      String step, CommandTemplate query, Map<Placeholder, Double> values, int mostNumbers) {
    return part(
        step,
        () -> {
          String sent = query.filled(values);
          double[] numbers = instrument.queryRecord(sent, mostNumbers);
          listener.accept(
              new Exchanged(step, query.key(), sent, numbers.length + " numbers as text"));
          return numbers;
        });
  }

  private static <T> T part(String step, Supplier<T> exchange) {
    try {
      return exchange.get();
    } catch (ReplyTimeoutException e) {
      throw e;
    } catch (ScpiException | LinkException e) {
      throw wrapped(step, e);
    }
  }

  private void command(String step, CommandTemplate command, Map<Placeholder, Double> values) {
    String sent = command.filled(values);
    instrument.command(sent);
    listener.accept(new Exchanged(step, command.key(), sent, ""));
  }

  private void checkQueue(String step) {
    instrument.checkErrors();
    listener.accept(new Exchanged(step, "", ERROR_QUEUE, "no error"));
  }

  private static <T> T in(String step, Supplier<T> exchange) {
    try {
      return exchange.get();
    } catch (ScpiException | LinkException e) {
      throw wrapped(step, e);
    }
  }

  static ScopeException wrapped(String step, RuntimeException cause) {
    return new ScopeException(step + ": " + cause.getMessage(), cause);
  }
}

package mainsgap.scope;

import java.util.List;
import java.util.Map;
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
  private final ScpiInstrument instrument;

  Exchange(ScpiInstrument instrument) {
    this.instrument = instrument;
  }

  /** Sends the commands, then lets the instrument complain. */
  void send(String step, List<CommandTemplate> commands, Map<Placeholder, Double> values) {
    in(
        step,
        () -> {
          commands.forEach(command -> instrument.command(command.filled(values)));
          instrument.checkErrors();
          return true;
        });
  }

  /** Lets the instrument complain of what it was told before. */
  void checkErrors(String step) {
    in(
        step,
        () -> {
          instrument.checkErrors();
          return true;
        });
  }

  String ask(String step, CommandTemplate query) {
    return in(step, () -> instrument.query(query.filled(Map.of())));
  }

  double askNumber(String step, CommandTemplate query, Map<Placeholder, Double> values) {
    return in(step, () -> instrument.queryNumber(query.filled(values)));
  }

  double[] askNumbers(String step, CommandTemplate query, Map<Placeholder, Double> values) {
    return in(step, () -> instrument.queryNumbers(query.filled(values)));
  }

  /**
   * Selects a part of a record and reads it.
   *
   * @throws ReplyTimeoutException if the block did not come in time: less may come
   */
  byte[] askBlock(String step, WaveformTransfer how, Map<Placeholder, Double> values, int most) {
    try {
      how.window().forEach(command -> instrument.command(command.filled(values)));
      return instrument.queryBlock(how.data().filled(values), most);
    } catch (ReplyTimeoutException e) {
      throw e;
    } catch (ScpiException | LinkException e) {
      throw wrapped(step, e);
    }
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

package mainsgap.scope;

import java.util.Map;

/** Finds out what the samples of a selected channel mean, before they are read. */
interface RecordDescriber {

  RecordDescription describe(Asking asking);

  /**
   * Whom to ask, and for what.
   *
   * @param step what is being done, for a sentence
   * @param channel its number
   * @param record as it was set
   */
  record Asking(Exchange exchange, String step, int channel, AppliedRecord record) {
    String text(CommandTemplate query) {
      return exchange.ask(step, query, values());
    }

    double number(CommandTemplate query) {
      return exchange.askNumber(step, query, values());
    }

    double[] numbers(CommandTemplate query) {
      return exchange.askNumbers(step, query, values());
    }

    private Map<Placeholder, Double> values() {
      return TemplateValues.channel(channel);
    }
  }
}

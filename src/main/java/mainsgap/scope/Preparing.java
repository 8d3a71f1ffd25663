package mainsgap.scope;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import mainsgap.scope.WaveformTransfer.Preparation;
import mainsgap.scope.WaveformTransfer.Ready;

/** Has an instrument prepare the samples of a channel before they are asked for. */
final class Preparing {
  private final Exchange exchange;
  private final Optional<Preparation> preparation;
  private final Pauses pauses;
  private final String step;

  Preparing(Exchange exchange, Optional<Preparation> preparation, Pauses pauses, String step) {
    this.exchange = exchange;
    this.preparation = preparation;
    this.pauses = pauses;
    this.step = step;
  }

  /** The whole record of a channel, which has {@code samples}. */
  void record(int channel, int samples) {
    if (preparation.isEmpty()) {
      return;
    }
    Preparation how = preparation.get();
    how.perSampleSeconds()
        .ifPresent(seconds -> pauses.pause(Duration.ofNanos((long) (seconds * samples * 1e9))));
    if (!how.forEachPart()) {
      prepare(how, TemplateValues.part(channel, 1, samples));
    }
  }

  /** One part of it. */
  void part(Map<Placeholder, Double> values) {
    preparation.filter(Preparation::forEachPart).ifPresent(how -> prepare(how, values));
  }

  private void prepare(Preparation how, Map<Placeholder, Double> values) {
    exchange.send(step, how.commands(), values);
    how.ready().ifPresent(ready -> await(ready, values));
  }

  private void await(Ready ready, Map<Placeholder, Double> values) {
    String[] answer = {""};
    boolean done =
        pauses.until(
            ready.atMost(),
            ready.poll(),
            () -> {
              answer[0] = Answers.bare(exchange.ask(step, ready.query(), values));
              return ready.answer().matcher(answer[0]).matches();
            });
    if (!done) {
      throw new ScopeException(
          step
              + ": the instrument still answers '"
              + answer[0]
              + "' to "
              + ready.query().filled(values)
              + " after "
              + Words.of(ready.atMost().toMillis() / 1e3, "s")
              + ", expected "
              + ready.answer()
              + ": allow more time by 'waveform.prepare.at-most-millis' in its profile");
    }
  }
}

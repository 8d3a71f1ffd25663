package mainsgap.scope;

import java.util.List;
import mainsgap.link.LinkClosedException;
import mainsgap.scope.ProbeStep.Answer;
import mainsgap.scpi.Identity;
import mainsgap.scpi.InstrumentComplaint;
import mainsgap.scpi.InstrumentError;
import mainsgap.scpi.ReplyTimeoutException;
import mainsgap.scpi.ScpiException;
import mainsgap.scpi.ScpiInstrument;

/**
 * Asks an instrument what it may not know. Whatever it does then, the next question finds it in
 * step again: silence ends by the time-out and a device clear.
 */
final class ProbeQuestions {
  private final ScpiInstrument instrument;
  private boolean queueAnswers = true;

  ProbeQuestions(ScpiInstrument instrument) {
    this.instrument = instrument;
  }

  Identity identity() {
    return instrument.identity();
  }

  /** The question and what came of it; whether that fits is for the caller. */
  ProbeStep ask(String query) {
    try {
      return step(query, Answer.ANSWERED, instrument.query(query).strip(), drained());
    } catch (InstrumentComplaint e) {
      return step(query, Answer.SILENT, "", words(e.errors()));
    } catch (ReplyTimeoutException e) {
      // the queue was asked after the silence, and held nothing or was silent too
      return step(query, Answer.SILENT, "", List.of());
    } catch (LinkClosedException e) {
      instrument.clear();
      return step(query, Answer.BROKE_OFF, "", List.of());
    } catch (ScpiException e) {
      return step(query, Answer.UNUSABLE, String.valueOf(e.getMessage()), drained());
    }
  }

  private ProbeStep step(String query, Answer answer, String text, List<String> errors) {
    return new ProbeStep(query, "", answer, text, errors, queueAnswers, false);
  }

  /** An instrument without an error queue costs one time-out, not one for each question. */
  private List<String> drained() {
    if (!queueAnswers) {
      return List.of();
    }
    try {
      return words(instrument.drainErrors());
    } catch (ScpiException e) {
      queueAnswers = false;
      return List.of();
    }
  }

  private static List<String> words(List<InstrumentError> errors) {
    return errors.stream().map(InstrumentError::toString).toList();
  }
}

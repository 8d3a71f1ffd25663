package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import mainsgap.signal.Capture;
import mainsgap.signal.HarmonicModel;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class EventSearchTest {
  private final KnownCapture clipped = Kind.CLIPPED.capture(3);
  private final KnownCapture clean = Kind.FREE_RUNNING.capture(1);

  private static Recording output(KnownCapture known) {
    Capture capture = known.capture();
    return Recording.of(capture.output(), capture.time(), known.task());
  }

  private static EventSearch search(Recording output) {
    HarmonicModel start = FirstCycles.of(output);
    return new EventSearch(output, start, FirstCycles.noiseVolts(output, start), null);
  }

  private static @Nullable FoundEvent atLoss(KnownCapture known) {
    Recording output = output(known);
    int loss = (int) output.time().indexAt(known.truth().lossSeconds());
    int settled = loss - (int) (output.samplesPerCycle() / 10);
    Supply before = Supply.fit(output, 0, settled, known.task().nominalFrequencyHertz());
    return search(output).at(output, before, loss);
  }

  @Test
  void aSearchThatCannotMeasureSaysWhy() {
    EventSearch search = search(output(clipped));
    CannotMeasureException reason = assertThrows(CannotMeasureException.class, search::found);
    assertTrue(String.valueOf(reason.getMessage()).contains("clipped"), reason::toString);
  }

  /** The reason of a place that was only tried would stand for that of the capture. */
  @Test
  void aPlaceThatIsTriedAndCannotBeMeasuredIsNone() {
    assertNull(atLoss(clipped));
  }

  @Test
  void aPlaceThatIsTriedAndCanBeMeasuredIsTheEvent() {
    FoundEvent event = atLoss(clean);
    assertNotNull(event);
    assertEquals(Outcome.Kind.MEASURED, event.outcome().kind());
  }
}

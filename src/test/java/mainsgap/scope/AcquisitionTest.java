package mainsgap.scope;

import static mainsgap.scope.AcquisitionState.COMPLETE;
import static mainsgap.scope.AcquisitionState.FILLING;
import static mainsgap.scope.AcquisitionState.IDLE;
import static mainsgap.scope.AcquisitionState.RECORDING;
import static mainsgap.scope.AcquisitionState.WATCHING;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class AcquisitionTest {

  @Test
  void stoppedBeforeItWasSeenRunningIsNotComplete() {
    Acquisition triggered = new Acquisition(false, true);
    assertEquals(
        List.of(IDLE, IDLE, FILLING, WATCHING, RECORDING, COMPLETE),
        meanings(triggered, IDLE, COMPLETE, FILLING, WATCHING, RECORDING, IDLE));
  }

  @Test
  void theWholeForcedRecordIsTheTimeToWatch() {
    assertEquals(
        List.of(IDLE, WATCHING, WATCHING, COMPLETE),
        meanings(new Acquisition(true, false), IDLE, RECORDING, RECORDING, IDLE));
  }

  @Test
  void triggerIsForcedOnceAndOnlyWhenTheInstrumentWaits() {
    Acquisition forced = new Acquisition(true, true);
    assertFalse(forced.takeForce(IDLE));
    assertFalse(forced.takeForce(FILLING));
    assertEquals(FILLING, forced.means(FILLING));
    assertTrue(forced.takeForce(WATCHING));
    assertEquals(WATCHING, forced.means(WATCHING));
    assertFalse(forced.takeForce(WATCHING));
  }

  @Test
  void aTimeOutTriggerIsNeverForced() {
    assertFalse(new Acquisition(false, true).takeForce(WATCHING));
  }

  private static List<AcquisitionState> meanings(
      Acquisition acquisition, AcquisitionState... polled) {
    return List.of(polled).stream().map(acquisition::means).toList();
  }
}

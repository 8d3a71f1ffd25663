package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;

class StopOnExitTest {
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final StopRequest stop = new StopRequest();

  @Test
  void asksTheWorkToStopAndSaysNothingOnceItHasEnded() {
    StopOnExit stopOnExit = listening(Duration.ofSeconds(60));
    stopOnExit.workHasEnded();
    stopOnExit.stopAndWait();
    assertTrue(stop.isRequested());
    assertEquals("", err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void doesNotWaitForEverAndSaysWhatMayStillBeLive() {
    StopOnExit stopOnExit = listening(Duration.ZERO);
    stopOnExit.stopAndWait();
    stopOnExit.workHasEnded();
    assertTrue(err.toString(StandardCharsets.UTF_8).contains("may still be armed"));
    assertTrue(err.toString(StandardCharsets.UTF_8).contains("live from its battery"));
  }

  private StopOnExit listening(Duration limit) {
    return StopOnExit.install(
        stop, CommandRun.surroundings(new ByteArrayOutputStream(), err, stop).terminal(), limit);
  }
}

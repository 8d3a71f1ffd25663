package mainsgap.desk.trials;

import static mainsgap.desk.DeskToolkit.await;
import static mainsgap.desk.DeskToolkit.doOnFx;
import static mainsgap.desk.DeskToolkit.onFx;
import static org.junit.jupiter.api.Assertions.assertEquals;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.application.Platform;
import javafx.scene.Scene;
import mainsgap.bench.CatchWish;
import mainsgap.desk.DeskStage;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.manners.DeskTools;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/**
 * How long it takes from the last byte of a capture of a million samples (output and mains) to its
 * verdict on the screen, and to its trace; measured between are the measurement and the writing of
 * the session.
 */
@Tag("benchmark")
@ExtendWith(DeskToolkit.class)
class VerdictSpeedTest {
  private static final int TRIALS = 12;

  /** The next capture is not made while the last one is drawn. */
  private static final Duration APART = Duration.ofSeconds(3);

  private static final Path TABLE = Path.of("target", "verdict-speed.txt");

  @Test
  void lastByteToTheVerdictOnTheScreen(@TempDir Path folder) throws IOException {
    DeskTools tools = DeskToolsForTests.asInTheProgram(folder);
    SetRig rig = new SetRig(folder).trials(TRIALS).settle(APART).catching(CatchWish.FORCED_RECORD);
    TrialsModel model = onFx(() -> new TrialsModel(rig, tools, Doors.NONE));
    TrialsPage page = onFx(() -> new TrialsPage(model));
    DeskStage stage = DeskStage.of(tools, page, 1920, 1080);
    LastByte lastByte = new LastByte();
    lastByte.start();
    Logger conversation = (Logger) LoggerFactory.getLogger("mainsgap.scpi.Conversation");
    conversation.addAppender(lastByte);
    List<Double> verdictMillis = new ArrayList<>();
    List<Double> traceMillis = new ArrayList<>();
    int[] samples = {0};
    long[] since = {0};
    doOnFx(
        () -> {
          model
              .book()
              .lastProperty()
              .addListener(
                  (property, was, is) -> {
                    // what is read of the next trial must not count for the trace of this one
                    since[0] = lastByte.nanos;
                    onceSeen(stage.scene(), since[0], verdictMillis);
                  });
          model
              .book()
              .drawnProperty()
              .addListener(
                  (property, was, is) -> {
                    if (is != null) {
                      samples[0] =
                          is.scene().traces().stream().mapToInt(t -> t.time().length()).sum();
                      onceSeen(stage.scene(), since[0], traceMillis);
                    }
                  });
          model.start();
        });
    await("the end", () -> !model.runningProperty().get() && !model.waysOn().isEmpty());
    conversation.detachAppender(lastByte);
    doOnFx(page::closing);
    stage.close();

    assertEquals(1_000_000, samples[0]);
    assertEquals(TRIALS, verdictMillis.size());
    String table =
        "last byte of %d samples of output and mains to the screen; ms, trial by trial%n"
                .formatted(samples[0])
            + "verdict %s%ntrace   %s%n".formatted(words(verdictMillis), words(traceMillis));
    Files.writeString(TABLE, table);
  }

  /** Adds the time since {@code since} once the next picture is handed over to be shown. */
  private static void onceSeen(Scene scene, long since, List<Double> millis) {
    scene.addPostLayoutPulseListener(
        new Runnable() {
          private int pulses;

          @Override
          public void run() {
            if (++pulses == 2) {
              scene.removePostLayoutPulseListener(this);
              millis.add((System.nanoTime() - since) / 1e6);
            } else {
              Platform.requestNextPulse();
            }
          }
        });
    Platform.requestNextPulse();
  }

  private static String words(List<Double> millis) {
    return String.join(
        " ", millis.stream().map(one -> String.format(Locale.ROOT, "%.0f", one)).toList());
  }

  /** Notes when the last block of samples was whole. */
  private static final class LastByte extends AppenderBase<ILoggingEvent> {
    private volatile long nanos;

    @Override
    protected void append(ILoggingEvent event) {
      if (event.getFormattedMessage().contains("< block of ")) {
        nanos = System.nanoTime();
      }
    }
  }
}

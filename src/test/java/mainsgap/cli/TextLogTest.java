package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.joran.JoranConfigurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.util.LogbackMDCAdapter;
import ch.qos.logback.core.Appender;
import ch.qos.logback.core.joran.spi.JoranException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.Logger;

/** The logging configuration as it is shipped. */
class TextLogTest {
  private final LoggerContext context = new LoggerContext();
  private final Path folder;

  TextLogTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @AfterEach
  void closeTheFile() {
    context.stop();
  }

  @Test
  void everythingGoesToTheFileAndNothingToTheConsole() throws Exception {
    configure(folder.resolve("state"));
    context.getLogger("mainsgap.scpi").debug("< 0,\"No error\"");
    Path log = folder.resolve("state").resolve("mainsgap.log");
    assertTrue(Files.readString(log).contains("No error"));
    List<Appender<ILoggingEvent>> appenders = new ArrayList<>();
    context
        .getLogger(Logger.ROOT_LOGGER_NAME)
        .iteratorForAppenders()
        .forEachRemaining(appenders::add);
    assertEquals(List.of("FILE"), appenders.stream().map(Appender::getName).toList());
  }

  @Test
  void aFolderThatCannotBeMadeIsNoReasonToStop() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "not a folder");
    configure(file.resolve("state"));
    assertDoesNotThrow(() -> context.getLogger("mainsgap.scpi").info("lost, and no harm done"));
    assertFalse(Files.exists(file.resolve("state")));
  }

  private void configure(Path logFolder) throws JoranException, IOException {
    context.putProperty("mainsgap.log.folder", logFolder.toString());
    context.setMDCAdapter(new LogbackMDCAdapter());
    JoranConfigurator configurator = new JoranConfigurator();
    configurator.setContext(context);
    try (var stream = TextLogTest.class.getResourceAsStream("/logback.xml")) {
      configurator.doConfigure(Objects.requireNonNull(stream));
    }
  }
}

package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DataFolderTest {
  private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");

  /** The XDG base directory specification, and the custom of the other systems. */
  @ParameterizedTest
  @CsvSource({
    "Linux, /data, , /data/mainsgap",
    "Linux, relative, , /home/ada/.local/share/mainsgap",
    "Linux, , , /home/ada/.local/share/mainsgap",
    "Mac OS X, , , /home/ada/Library/Application Support/mainsgap",
    "Windows 11, , /local, /local/mainsgap",
  })
  void dataLiesWhereTheSystemKeepsIt(String system, String xdg, String local, String expected) {
    Properties properties = new Properties();
    properties.setProperty("os.name", system);
    properties.setProperty("user.home", "/home/ada");
    Map<String, String> environment =
        Map.of("XDG_DATA_HOME", xdg == null ? "" : xdg, "LOCALAPPDATA", local == null ? "" : local);

    assertEquals(Path.of(expected), DataFolder.of(environment, properties));
  }

  @Test
  void newSessionIsNamedByUnitAndTime(@TempDir Path folder) throws Exception {
    Path first = DataFolder.newSession(folder, "Unit 3, on the shelf!", NOON);
    Files.createFile(first);

    assertEquals("unit-3-on-the-shelf-20260301-120000Z.mainsgap", first.getFileName().toString());
    assertEquals(
        "unit-3-on-the-shelf-20260301-120000Z-2.mainsgap",
        DataFolder.newSession(folder, "Unit 3, on the shelf!", NOON).getFileName().toString());
  }
}

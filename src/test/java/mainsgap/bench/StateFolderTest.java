package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import org.junit.jupiter.api.Test;

/** Against the XDG base directory specification 0.8. */
class StateFolderTest {
  private static final Path DEFAULT = Path.of("/home/someone/.local/state/mainsgap");

  @Test
  void belowHomeWhereNothingIsSet() {
    assertEquals(DEFAULT, StateFolder.of(Map.of(), properties("Linux")));
  }

  @Test
  void theVariableMovesIt() {
    assertEquals(
        Path.of("/var/here/mainsgap"),
        StateFolder.of(Map.of("XDG_STATE_HOME", "/var/here"), properties("Linux")));
  }

  @Test
  void aRelativePathInTheVariableIsIgnored() {
    assertEquals(DEFAULT, StateFolder.of(Map.of("XDG_STATE_HOME", "here"), properties("Linux")));
  }

  @Test
  void windowsKeepsItAmongLocalApplicationData() {
    assertEquals(
        Path.of("C:/Data", "mainsgap", "state"),
        StateFolder.of(Map.of("LOCALAPPDATA", "C:/Data"), properties("Windows 11")));
  }

  @Test
  void thePropertyComesFirst() {
    Properties properties = properties("Linux");
    properties.setProperty("mainsgap.state.folder", "target/state");
    assertEquals(
        Path.of("target/state"), StateFolder.of(Map.of("XDG_STATE_HOME", "/var/here"), properties));
  }

  private static Properties properties(String system) {
    Properties properties = new Properties();
    properties.setProperty("os.name", system);
    properties.setProperty("user.home", "/home/someone");
    return properties;
  }
}

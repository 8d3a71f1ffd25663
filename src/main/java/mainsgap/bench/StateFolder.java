package mainsgap.bench;

import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;

/** Where the text log is kept, and what the desk left as it was. */
public final class StateFolder {
  /** A system property that overrides the place. */
  static final String PROPERTY = "mainsgap.state.folder";

  private StateFolder() {}

  /** By the XDG base directory specification, on Windows among the local application data. */
  public static Path of(Map<String, String> environment, Properties properties) {
    String override = properties.getProperty(PROPERTY, "");
    if (!override.isBlank()) {
      return Path.of(override);
    }
    String windowsData = environment.getOrDefault("LOCALAPPDATA", "");
    if (properties.getProperty("os.name", "").startsWith("Windows") && !windowsData.isBlank()) {
      return Path.of(windowsData, "mainsgap", "state");
    }
    String xdg = environment.getOrDefault("XDG_STATE_HOME", "");
    // The specification: a relative path in the variable is to be ignored.
    if (xdg.startsWith("/")) {
      return Path.of(xdg, "mainsgap");
    }
    return Path.of(properties.getProperty("user.home", "."), ".local", "state", "mainsgap");
  }
}

package mainsgap.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;

/** The user's data folder, and names for new sessions in it. */
final class DataFolder {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private DataFolder() {}

  /** By the XDG base directory specification, and where Windows and macOS keep such data. */
  static Path of(Map<String, String> environment, Properties properties) {
    String system = properties.getProperty("os.name", "");
    Path home = Path.of(properties.getProperty("user.home", "."));
    String windowsData = environment.getOrDefault("LOCALAPPDATA", "");
    String xdg = environment.getOrDefault("XDG_DATA_HOME", "");
    if (system.startsWith("Windows") && !windowsData.isBlank()) {
      return Path.of(windowsData, "mainsgap");
    }
    if (system.startsWith("Mac")) {
      return home.resolve(Path.of("Library", "Application Support", "mainsgap"));
    }
    // The specification: a relative path in the variable is to be ignored.
    return xdg.startsWith("/")
        ? Path.of(xdg, "mainsgap")
        : home.resolve(Path.of(".local", "share", "mainsgap"));
  }

  /** A file that is not there yet, named by unit and time. */
  static Path newSession(Path folder, String unit, Instant now) {
    String name = slug(unit) + "-" + STAMP.format(now);
    Path file = folder.resolve(name + ".mainsgap");
    for (int i = 2; Files.exists(file); i++) {
      file = folder.resolve(name + "-" + i + ".mainsgap");
    }
    return file;
  }

  private static String slug(String unit) {
    String plain = unit.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String trimmed = plain.replaceAll("^-|-$", "");
    return trimmed.isEmpty() ? "unit" : trimmed.substring(0, Math.min(40, trimmed.length()));
  }
}

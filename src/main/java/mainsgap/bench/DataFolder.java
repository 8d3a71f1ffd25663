package mainsgap.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.stream.Stream;

/** The user's data folder, the sessions in it, and names for new ones. */
public final class DataFolder {
  private static final String SUFFIX = ".mainsgap";

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

  /** That of the user who runs the program. */
  public static Path ofUser() {
    return of(System.getenv(), System.getProperties());
  }

  /**
   * The files in {@code folder} that are named as sessions, the one written last first; none where
   * there is no such folder.
   *
   * @throws BenchException with a sentence where the folder cannot be read
   */
  public static List<Path> sessionsIn(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().endsWith(SUFFIX))
          .filter(Files::isRegularFile)
          .sorted(Comparator.comparing(DataFolder::writtenAt).reversed())
          .toList();
    } catch (IOException | UncheckedIOException e) {
      throw new BenchException(
          "the folder " + folder + " could not be read: " + e.getMessage() + "; check who may", e);
    }
  }

  /** A file that goes away while the folder is read is the oldest. */
  private static Instant writtenAt(Path file) {
    try {
      return Files.getLastModifiedTime(file).toInstant();
    } catch (IOException e) {
      return Instant.EPOCH;
    }
  }

  /** A file that is not there yet, named by unit and time. */
  static Path newSession(Path folder, String unit, Instant now) {
    String name = slug(unit) + "-" + STAMP.format(now);
    Path file = folder.resolve(name + SUFFIX);
    for (int i = 2; Files.exists(file); i++) {
      file = folder.resolve(name + "-" + i + SUFFIX);
    }
    return file;
  }

  private static String slug(String unit) {
    String plain = unit.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String trimmed = plain.replaceAll("^-|-$", "");
    return trimmed.isEmpty() ? "unit" : trimmed.substring(0, Math.min(40, trimmed.length()));
  }
}

package mainsgap.desk.rig;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import mainsgap.bench.BenchException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Unsaved settings, in a file of the state folder. Any thread may call it. */
final class Draft {
  private static final Logger LOG = LoggerFactory.getLogger(Draft.class);

  private final Path file;

  Draft(Path stateFolder) {
    file = stateFolder.resolve("rig-draft.properties");
  }

  /** What was left unsaved; empty where nothing was, or where it cannot be read. */
  synchronized Optional<RigSnapshot> read() {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    Properties words = new Properties();
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      words.load(reader);
    } catch (IOException | IllegalArgumentException e) {
      LOG.warn("the unsaved rig could not be read from {}", file, e);
      return Optional.empty();
    }
    Map<String, String> typed = new HashMap<>();
    words.stringPropertyNames().forEach(key -> typed.put(key, words.getProperty(key)));
    return Optional.of(new RigSnapshot(typed));
  }

  /**
   * Keeps {@code snapshot} in the place of what was kept.
   *
   * @throws BenchException with a sentence if it cannot
   */
  synchronized void write(RigSnapshot snapshot) {
    Properties words = new Properties();
    words.putAll(snapshot.words());
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      try (Writer writer = Files.newBufferedWriter(fresh, StandardCharsets.UTF_8)) {
        words.store(writer, "A rig that is not saved yet");
      }
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw cannot("kept in " + file, e);
    }
  }

  /**
   * There is nothing unsaved any more.
   *
   * @throws BenchException with a sentence if the file cannot be taken away
   */
  synchronized void forget() {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw cannot("taken out of " + file, e);
    }
  }

  private static BenchException cannot(String deed, IOException cause) {
    return new BenchException(
        "the unsaved rig cannot be "
            + deed
            + ": is there room on the disk, and may its folder be written to?",
        cause);
  }
}

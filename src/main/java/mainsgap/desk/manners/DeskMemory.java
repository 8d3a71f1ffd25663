package mainsgap.desk.manners;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Properties;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the window finds as it was left: words by name, in one file of the state folder. Losing it
 * costs comfort, never evidence: a file that cannot be read or written is said in the log and gone
 * on without. Any thread may call it.
 */
public final class DeskMemory {
  /** The folder in which sessions were kept last, where one was chosen. */
  public static final String SESSIONS_FOLDER = "sessions.folder";

  private static final Logger LOG = LoggerFactory.getLogger(DeskMemory.class);

  private final Path folder;
  private final Path file;
  private final Properties words = new Properties();

  private DeskMemory(Path folder) {
    this.folder = folder;
    this.file = folder.resolve("desk.properties");
  }

  /** What {@code desk.properties} of the state folder remembers; nothing where it is missing. */
  public static DeskMemory in(Path stateFolder) {
    DeskMemory memory = new DeskMemory(stateFolder);
    memory.load();
    return memory;
  }

  /** The folder for what is too large for a word. */
  public Path folder() {
    return folder;
  }

  /** The words kept under {@code name}. */
  public synchronized Optional<String> text(String name) {
    return Optional.ofNullable(words.getProperty(name)).filter(found -> !found.isBlank());
  }

  /** The number kept under {@code name}; empty where there is none, or no number. */
  public OptionalDouble number(String name) {
    try {
      return text(name).map(Double::parseDouble).stream().mapToDouble(d -> d).findFirst();
    } catch (NumberFormatException e) {
      LOG.debug("{} in {} is no number", name, file);
      return OptionalDouble.empty();
    }
  }

  /** Keeps {@code text} under {@code name}; empty forgets. Written by {@link #save}. */
  public synchronized void keep(String name, String text) {
    words.setProperty(name, text);
  }

  /** Keeps {@code number} under {@code name}. */
  public void keep(String name, double number) {
    keep(name, Double.toString(number));
  }

  /** Writes all to the file, which is replaced as a whole. */
  public synchronized void save() {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.createDirectories(folder);
      try (Writer writer = Files.newBufferedWriter(fresh, StandardCharsets.UTF_8)) {
        words.store(writer, "How the window of Mainsgap was left");
      }
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      LOG.warn("how the window was left could not be written to {}", file, e);
    }
  }

  private void load() {
    if (!Files.exists(file)) {
      return;
    }
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      words.load(reader);
    } catch (IOException | IllegalArgumentException e) {
      words.clear();
      LOG.warn("how the window was left could not be read from {}", file, e);
    }
  }
}

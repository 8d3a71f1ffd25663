package mainsgap.desk.findings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.desk.manners.DeskMemory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Which sessions were open when the window was left, and which were before. */
final class OpenMemory {
  private static final Logger LOG = LoggerFactory.getLogger(OpenMemory.class);
  private static final String OPEN = "findings.open";
  private static final String RECENT = "findings.recent";
  private static final int MOST_RECENT = 20;

  private final DeskMemory memory;

  OpenMemory(DeskMemory memory) {
    this.memory = memory;
  }

  /** Where sessions were kept last, where such a folder was chosen. */
  List<Path> folder() {
    return paths(DeskMemory.SESSIONS_FOLDER);
  }

  List<Path> open() {
    return paths(OPEN);
  }

  /** The last ones first. */
  List<Path> recent() {
    return paths(RECENT);
  }

  void keepOpen(List<Path> files) {
    keep(OPEN, files.stream());
  }

  /** {@code file} is the most recent one. */
  void keepRecent(Path file) {
    Set<Path> files = new LinkedHashSet<>(List.of(file));
    files.addAll(recent());
    keep(RECENT, files.stream().limit(MOST_RECENT));
  }

  private void keep(String name, Stream<Path> files) {
    memory.keep(name, files.map(Path::toString).collect(Collectors.joining("\n")));
  }

  private List<Path> paths(String name) {
    List<Path> found = new ArrayList<>();
    for (String line : memory.text(name).orElse("").lines().toList()) {
      try {
        found.add(Path.of(line));
      } catch (InvalidPathException e) {
        LOG.debug("{} remembers {}, which is no path here", name, line);
      }
    }
    return List.copyOf(found);
  }
}

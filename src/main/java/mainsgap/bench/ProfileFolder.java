package mainsgap.bench;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;

/** Where the instrument profiles lie. */
final class ProfileFolder {
  /** A system property that names another folder. */
  static final String PROPERTY = "mainsgap.profiles.folder";

  private static final String NAME = "instrument-profiles";

  private ProfileFolder() {}

  /** Beside {@code lib} in the portable folder, at the top of the project in a build. */
  static Path find() {
    String named = System.getProperty(PROPERTY, "");
    Path folder = named.isBlank() ? besideTheProgram() : Path.of(named);
    if (!Files.isDirectory(folder)) {
      throw new BenchException(
          "the folder of instrument profiles is missing: "
              + folder
              + "; it belongs beside the program's lib folder");
    }
    return folder;
  }

  private static Path besideTheProgram() {
    CodeSource source = ProfileFolder.class.getProtectionDomain().getCodeSource();
    try {
      // lib/mainsgap.jar and target/classes both lie two steps below the folder that holds it.
      Path program = source == null ? null : Path.of(source.getLocation().toURI());
      Path above =
          program == null || program.getParent() == null ? null : program.getParent().getParent();
      return above == null ? Path.of(NAME) : above.resolve(NAME);
    } catch (URISyntaxException e) {
      throw new BenchException("the program's own place cannot be told", e);
    }
  }
}

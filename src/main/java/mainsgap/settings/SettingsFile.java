package mainsgap.settings;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/** A TOML file, read whole. Every complaint about it names the file, the line and the key. */
public final class SettingsFile {
  /** A profile takes some kilobytes; what is far larger is not one. */
  static final int LARGEST_BYTES = 256 * 1024;

  private static final String EXTENSION = ".toml";

  private final String name;
  private final String text;
  private final TomlParseResult content;

  private SettingsFile(String name, String text) {
    this.name = name;
    this.text = text;
    this.content = parse(name, text);
  }

  /**
   * Reads {@code name} inside {@code folder}, and nothing outside of it, whichever way the name
   * tries: upwards, absolute, or through a link.
   *
   * @throws SettingsException if the name leads outside, or the file cannot be read as TOML
   */
  public static SettingsFile read(Path folder, String name) {
    Path file = inside(folder, name);
    try {
      if (!file.toRealPath().startsWith(folder.toRealPath())) {
        throw outside(folder, name);
      }
    } catch (IOException e) {
      throw new SettingsException(
          "no settings file '" + name + "' in " + folder + ": check the name", e);
    }
    return readAs(name, file);
  }

  /**
   * Reads a file that the user named.
   *
   * @throws SettingsException if the file cannot be read as TOML
   */
  public static SettingsFile readFile(Path file) {
    if (!Files.exists(file)) {
      throw new SettingsException("no settings file " + file + ": check the path");
    }
    return readAs(file.toString(), file);
  }

  /**
   * Reads a file that comes with the program, from beside {@code owner}.
   *
   * @throws SettingsException if it is missing or cannot be read as TOML
   */
  public static SettingsFile readResource(Class<?> owner, String name) {
    try (InputStream in = owner.getResourceAsStream(name)) {
      if (in == null) {
        throw new SettingsException(
            "the program lacks its own file " + name + ": install it again");
      }
      return new SettingsFile(name, text(name, in));
    } catch (IOException e) {
      throw new SettingsException(name + " cannot be read: " + e.getMessage(), e);
    }
  }

  /**
   * The names of the TOML files in {@code folder}, sorted.
   *
   * @throws SettingsException if the folder cannot be listed
   */
  public static List<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(EXTENSION))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new SettingsException("the folder " + folder + " cannot be listed", e);
    }
  }

  /** The file's name as it was asked for. */
  public String name() {
    return name;
  }

  /**
   * The whole file as a table.
   *
   * @param allowedKeys the keys that may stand at the top
   * @throws SettingsException if there is another key
   */
  public SettingsTable root(String... allowedKeys) {
    return new SettingsTable(new SettingsPlace(name, 1, ""), content, List.of(allowedKeys));
  }

  /** The table of this path as it is written, with its comments; empty where it is not there. */
  public String block(String... path) {
    return TomlBlock.of(text, content, List.of(path));
  }

  private static Path inside(Path folder, String name) {
    Path relative;
    try {
      relative = Path.of(name);
    } catch (InvalidPathException e) {
      throw new SettingsException("'" + name + "' is not the name of a settings file", e);
    }
    Path base = folder.normalize();
    Path file = base.resolve(relative).normalize();
    boolean upwards = Stream.of(name.split("[/\\\\]")).anyMatch(".."::equals);
    if (relative.isAbsolute() || upwards || !file.startsWith(base)) {
      throw outside(folder, name);
    }
    return file;
  }

  private static SettingsException outside(Path folder, String name) {
    return new SettingsException(
        "'" + name + "' leads outside the folder " + folder + ": name a file inside it");
  }

  private static SettingsFile readAs(String name, Path file) {
    return new SettingsFile(name, text(name, file));
  }

  private static String text(String name, Path file) {
    if (!Files.isRegularFile(file)) {
      throw new SettingsException(name + " is not a file: name a TOML file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      return text(name, in);
    } catch (IOException e) {
      throw new SettingsException(name + " cannot be read: " + e.getMessage(), e);
    }
  }

  private static String text(String name, InputStream in) throws IOException {
    byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
    if (bytes.length > LARGEST_BYTES) {
      throw new SettingsException(
          name + " is larger than " + LARGEST_BYTES + " bytes: this is not a settings file");
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new SettingsException(name + " is not text in UTF-8: save it as such", e);
    }
  }

  private static TomlParseResult parse(String name, String text) {
    TomlParseResult result;
    try {
      result = Toml.parse(text);
    } catch (StackOverflowError e) {
      // The parser descends once for each bracket that a file opens.
      throw new SettingsException(name + " is nested too deep to be a settings file", e);
    }
    if (result.hasErrors()) {
      TomlParseError first = result.errors().get(0);
      throw new SettingsException(
          name + " line " + first.position().line() + ": not TOML: " + first.getMessage(), first);
    }
    return result;
  }
}

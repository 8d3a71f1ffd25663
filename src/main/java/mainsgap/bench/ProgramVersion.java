package mainsgap.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version of the program, as the build wrote it. */
public final class ProgramVersion {
  private ProgramVersion() {}

  /** The version, such as "0.1.0". */
  public static String get() {
    try (InputStream stream = ProgramVersion.class.getResourceAsStream("program.properties")) {
      if (stream == null) {
        throw new IllegalStateException("the program was built without its program.properties");
      }
      Properties properties = new Properties();
      properties.load(stream);
      return properties.getProperty("version", "unknown");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

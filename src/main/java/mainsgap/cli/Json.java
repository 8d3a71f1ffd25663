package mainsgap.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Documents of names and values in a fixed order. */
final class Json {
  private static final ObjectWriter WRITER = new ObjectMapper().writerWithDefaultPrettyPrinter();

  private Json() {}

  /** The document, ended by a new line. */
  static String document(Map<String, @Nullable Object> values) {
    try {
      return WRITER.writeValueAsString(values) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("only plain values are written: " + e.getMessage(), e);
    }
  }
}

package mainsgap.cli;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How results are printed. */
enum OutputFormat {
  /** For people. */
  TEXT,
  /** For scripts: one JSON document. */
  JSON;

  /** Reads the word of the option. */
  static final class Converter implements ITypeConverter<OutputFormat> {
    @Override
    public OutputFormat convert(String word) {
      return switch (word.toLowerCase(Locale.ROOT)) {
        case "text" -> TEXT;
        case "json" -> JSON;
        default -> throw new TypeConversionException("'" + word + "' is neither text nor json");
      };
    }
  }
}

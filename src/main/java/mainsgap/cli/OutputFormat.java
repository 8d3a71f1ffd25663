package mainsgap.cli;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How results are printed: the option of every command that has some. */
final class OutputFormat {

  @Option(
      names = "--format",
      paramLabel = "text|json",
      converter = Converter.class,
      description = "text for people (default), json for scripts: one document.")
  private Kind kind = Kind.TEXT;

  private enum Kind {
    TEXT,
    JSON
  }

  /** Whether a script reads the result. */
  boolean isJson() {
    return kind == Kind.JSON;
  }

  private static final class Converter implements ITypeConverter<Kind> {
    @Override
    public Kind convert(String word) {
      return switch (word.toLowerCase(Locale.ROOT)) {
        case "text" -> Kind.TEXT;
        case "json" -> Kind.JSON;
        default -> throw new TypeConversionException("'" + word + "' is neither text nor json");
      };
    }
  }
}

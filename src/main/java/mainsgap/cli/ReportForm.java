package mainsgap.cli;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** The forms in which a report is written. */
enum ReportForm {
  /** One page that needs nothing beside itself. */
  HTML;

  /** How a file's name ends. */
  String suffix() {
    return "." + word();
  }

  /** Its word on the command line. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Reads the form from an option's word. */
  static final class Converter implements ITypeConverter<ReportForm> {
    @Override
    public ReportForm convert(String word) {
      if (word.equalsIgnoreCase(HTML.name())) {
        return HTML;
      }
      throw new TypeConversionException(
          "'" + word + "' is no form of a report: choose " + HTML.word());
    }
  }
}

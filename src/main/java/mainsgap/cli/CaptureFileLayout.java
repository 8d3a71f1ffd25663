package mainsgap.cli;

import mainsgap.session.CaptureFileOptions;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What the user says of the capture files, where they do not tell it themselves. */
final class CaptureFileLayout {
  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec command;

  @Option(
      names = "--time-column",
      paramLabel = "COLUMN",
      description = "The times: a header's name, or a number from 1.")
  private @Nullable String timeColumn;

  @Option(
      names = "--voltage-column",
      paramLabel = "COLUMN",
      description = "The output voltage: a header's name, or a number from 1.")
  private @Nullable String voltageColumn;

  @Option(
      names = "--mains-column",
      paramLabel = "COLUMN",
      description =
          "The mains voltage, where the file has it: a header's name, or a number from 1.")
  private @Nullable String mainsColumn;

  @Option(
      names = "--interval",
      paramLabel = "TIME",
      converter = Milliseconds.Converter.class,
      description = "Sample interval with its unit, such as 10us, instead of a time column.")
  private @Nullable Milliseconds interval;

  @Option(
      names = "--scale",
      paramLabel = "FACTOR",
      description =
          "Multiplies the voltages, such as 100 for a probe factor that the file lacks"
              + " (default: ${DEFAULT-VALUE}).")
  private double scale = 1;

  /** The options for reading, once they fit together. */
  CaptureFileOptions options() {
    try {
      return new CaptureFileOptions(
          timeColumn,
          voltageColumn,
          mainsColumn,
          interval == null ? null : interval.millis() / 1e3,
          scale);
    } catch (IllegalArgumentException e) {
      if (command == null) {
        throw e;
      }
      throw new ParameterException(command.commandLine(), String.valueOf(e.getMessage()), e);
    }
  }
}

package mainsgap.cli;

import java.util.EnumMap;
import java.util.Map;
import mainsgap.session.CaptureFileOptions;
import mainsgap.signal.ChannelRole;
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
      names = "--second-leg-column",
      paramLabel = "COLUMN",
      description = "The voltage of the second leg of a split output; the worse leg is judged.")
  private @Nullable String secondLegColumn;

  @Option(
      names = "--current-column",
      paramLabel = "COLUMN",
      description = "The load current: tells whether the load draws it again at the end.")
  private @Nullable String currentColumn;

  @Option(
      names = "--marker-column",
      paramLabel = "COLUMN",
      description = "An auxiliary contact or another signal: tells when it changed.")
  private @Nullable String markerColumn;

  @Option(
      names = "--interval",
      paramLabel = "TIME",
      converter = Milliseconds.Converter.class,
      description =
          "Sample interval with its unit, such as 10us, where the file tells no times; a time column"
              + " that it has is held against it.")
  private @Nullable Milliseconds interval;

  @Option(
      names = "--time-base-ppm",
      paramLabel = "PPM",
      description =
          "Accuracy of the instrument's time base as its data sheet states it, in parts per million"
              + " (default: 100, assumed: no file tells it).")
  private @Nullable Double timeBasePpm;

  @Option(
      names = "--scale",
      paramLabel = "FACTOR",
      description =
          "Multiplies the voltages, such as 100 for a probe factor that the file lacks"
              + " (default: ${DEFAULT-VALUE}).")
  private double scale = 1;

  private Map<ChannelRole, String> columns() {
    Map<ChannelRole, String> columns = new EnumMap<>(ChannelRole.class);
    put(columns, ChannelRole.OUTPUT, voltageColumn);
    put(columns, ChannelRole.MAINS, mainsColumn);
    put(columns, ChannelRole.SECOND_LEG, secondLegColumn);
    put(columns, ChannelRole.LOAD_CURRENT, currentColumn);
    put(columns, ChannelRole.MARKER, markerColumn);
    return columns;
  }

  private static void put(
      Map<ChannelRole, String> columns, ChannelRole role, @Nullable String name) {
    if (name != null) {
      columns.put(role, name);
    }
  }

  /** The options for reading, once they fit together. */
  CaptureFileOptions options() {
    try {
      return new CaptureFileOptions(
          timeColumn,
          columns(),
          interval == null ? null : interval.millis() / 1e3,
          timeBasePpm,
          scale);
    } catch (IllegalArgumentException e) {
      if (command == null) {
        throw e;
      }
      throw new ParameterException(command.commandLine(), String.valueOf(e.getMessage()), e);
    }
  }
}

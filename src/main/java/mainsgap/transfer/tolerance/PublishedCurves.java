package mainsgap.transfer.tolerance;

import java.util.List;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;
import mainsgap.transfer.tolerance.ToleranceLevel.Need;
import org.jspecify.annotations.Nullable;

/** The tolerance curves that come with the program, read from their data file. */
public final class PublishedCurves {
  private static final String FILE = "voltage-tolerance.toml";
  private static final double MOST_MILLIS = 1e6;
  private static final double MOST_PERCENT = 1e3;
  private static final double MOST_HERTZ = 400;
  private static final double MOST_VOLTS = 1000;
  private static final String[] CURVE_KEYS = {
    "name",
    "edition",
    "scope",
    "nominal-volts",
    "frequency-hertz",
    "from-milliseconds",
    "below",
    "above",
    "sag",
    "swell"
  };
  private static final String[] LEVEL_KEYS = {
    "up-to-milliseconds", "cycles", "at-hertz", "percent", "need", "evidence", "source"
  };

  private PublishedCurves() {}

  /**
   * All curves, in the file's order.
   *
   * @throws mainsgap.settings.SettingsException if the file is damaged
   */
  public static List<ToleranceCurve> all() {
    return in(SettingsFile.readResource(PublishedCurves.class, FILE));
  }

  static List<ToleranceCurve> in(SettingsFile file) {
    return file.root("curve").tables("curve", CURVE_KEYS).stream()
        .map(PublishedCurves::curve)
        .toList();
  }

  private static ToleranceCurve curve(SettingsTable table) {
    return new ToleranceCurve(
        table.text("name"),
        table.text("edition"),
        table.text("scope"),
        orNull(table, "nominal-volts", MOST_VOLTS),
        orNull(table, "frequency-hertz", MOST_HERTZ),
        table.optionalNumber("from-milliseconds", 0, MOST_MILLIS).orElse(0),
        table.optionalText("below").orElse(null),
        table.optionalText("above").orElse(null),
        levels(table, "sag"),
        levels(table, "swell"));
  }

  private static List<ToleranceLevel> levels(SettingsTable table, String key) {
    return table.tables(key, LEVEL_KEYS).stream().map(PublishedCurves::level).toList();
  }

  private static ToleranceLevel level(SettingsTable table) {
    return new ToleranceLevel(
        upToMillis(table),
        table.number("percent", 0, MOST_PERCENT),
        orNull(table, "at-hertz", MOST_HERTZ),
        table.has("need") ? table.choice("need", Need.class) : Need.REQUIRED,
        table.choice("evidence", Evidence.class),
        table.text("source"));
  }

  private static double upToMillis(SettingsTable table) {
    if (table.has("cycles")) {
      double cycles = table.number("cycles", 0, MOST_MILLIS);
      return 1e3 * cycles / table.number("at-hertz", 1, MOST_HERTZ);
    }
    return table
        .optionalNumber("up-to-milliseconds", 0, MOST_MILLIS)
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static @Nullable Double orNull(SettingsTable table, String key, double most) {
    return table.has(key) ? (Double) table.number(key, 0, most) : null;
  }
}

package mainsgap.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import mainsgap.arming.SwitchTiming;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * A series as its owner wrote it down; null where the plan does not say. {@code
 * src/docs/series-plan.md} tells the keys.
 *
 * @param trials how many measured trials are wanted
 * @param event what is measured
 * @param repeats attempts that may be repeated in all
 * @param settle how long the unit settles once the switch went back
 * @param pause how long mains stays on between two trials, beyond the settling
 * @param triggerWait how long an armed instrument waits
 * @param randomCycles a commanded opening is delayed evenly over so many whole cycles
 * @param randomSeed fixes the random delays
 * @param anglesDegrees at which a commanded switch opens, in turn; empty where it is left to chance
 */
public record SeriesPlan(
    @Nullable Integer trials,
    @Nullable Event event,
    @Nullable Integer repeats,
    @Nullable Duration settle,
    @Nullable Duration pause,
    @Nullable Duration triggerWait,
    @Nullable Integer randomCycles,
    @Nullable Integer randomSeed,
    List<Double> anglesDegrees) {
  /** The most trials of a series. */
  public static final int MOST_TRIALS = 10_000;

  /** Short enough to be typed again. */
  static final int HIGHEST_SEED = 1_000_000;

  /** Says nothing: all comes from elsewhere. */
  public static final SeriesPlan NONE =
      new SeriesPlan(null, null, null, null, null, null, null, null, List.of());

  private static final int MOST_REPEATS = 1000;
  private static final double LONGEST_WAIT_SECONDS = 24 * 3600;
  private static final double BELOW_FULL_TURN = Math.nextDown(360.0);
  private static final int MOST_ANGLES = 360;

  /** Takes its own copy. */
  public SeriesPlan {
    anglesDegrees = List.copyOf(anglesDegrees);
  }

  /**
   * Reads the file.
   *
   * @throws mainsgap.settings.SettingsException with file, line and key if it cannot be used
   */
  public static SeriesPlan read(Path file) {
    SettingsTable root = SettingsFile.readFile(file).root("series", "waits", "switching");
    SettingsTable series = root.optionalTable("series", "trials", "event", "repeats").orElse(null);
    SettingsTable waits =
        root.optionalTable("waits", "settle-seconds", "pause-seconds", "trigger-wait-seconds")
            .orElse(null);
    SettingsTable switching =
        root.optionalTable("switching", "random-delay-cycles", "random-seed", "angles-degrees")
            .orElse(null);
    return new SeriesPlan(
        whole(series, "trials", 1, MOST_TRIALS),
        series != null && series.has("event") ? series.choice("event", Event.class) : null,
        whole(series, "repeats", 0, MOST_REPEATS),
        seconds(waits, "settle-seconds", 0),
        seconds(waits, "pause-seconds", 0),
        seconds(waits, "trigger-wait-seconds", 0.1),
        whole(switching, "random-delay-cycles", 0, SwitchTiming.MOST_CYCLES),
        whole(switching, "random-seed", 0, HIGHEST_SEED),
        switching == null ? List.of() : angles(switching));
  }

  private static List<Double> angles(SettingsTable switching) {
    List<Double> angles = switching.numbers("angles-degrees", 0, BELOW_FULL_TURN);
    if (angles.size() > MOST_ANGLES) {
      throw switching.complaint(
          "angles-degrees", "has " + angles.size() + " angles; allowed: at most " + MOST_ANGLES);
    }
    if (!angles.isEmpty() && switching.has("random-delay-cycles")) {
      throw switching.complaint(
          "angles-degrees",
          "stands beside 'random-delay-cycles': an opening comes at a fixed angle or after a random"
              + " delay, write one of the two");
    }
    return angles;
  }

  private static @Nullable Integer whole(
      @Nullable SettingsTable table, String key, int least, int most) {
    return table == null || !table.has(key) ? null : (Integer) table.whole(key, least, most);
  }

  private static @Nullable Duration seconds(
      @Nullable SettingsTable table, String key, double least) {
    OptionalDouble found =
        table == null
            ? OptionalDouble.empty()
            : table.optionalNumber(key, least, LONGEST_WAIT_SECONDS);
    return found.isEmpty() ? null : Duration.ofMillis(Math.round(1e3 * found.getAsDouble()));
  }
}

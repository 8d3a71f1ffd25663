package mainsgap.transfer.tolerance;

import java.util.List;
import java.util.Locale;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;
import mainsgap.transfer.outcome.Wording;
import org.jspecify.annotations.Nullable;

/**
 * What one kind of load rides through with no voltage at all.
 *
 * @param load what it is
 * @param holdsMillis up to here it goes on working
 * @param dropsAfterMillis from here on it surely does not; null where that is not known
 * @param kind what the figure is said to be
 * @param condition under which it holds
 * @param evidence how well it is known here
 * @param source where it stands
 */
public record LoadRideThrough(
    String load,
    double holdsMillis,
    @Nullable Double dropsAfterMillis,
    Kind kind,
    String condition,
    Evidence evidence,
    String source) {
  private static final String FILE = "load-ride-through.toml";
  private static final double MOST_MILLIS = 1e4;

  /** What a figure is said to be. */
  public enum Kind {
    /** A design guide demands it. */
    REQUIRED,
    /** A design guide recommends it. */
    RECOMMENDED,
    /** A data sheet's typical value. */
    TYPICAL,
    /** A data sheet's least value. */
    MINIMUM,
    /** A tolerance curve. */
    TOLERANCE,
    /** A range of trade practice. */
    RANGE
  }

  /** What a gap does to the load. */
  public enum Answer {
    /** As far as the figure goes, it works on. */
    RIDES_THROUGH,
    /** The figure does not reach so far: it may work on or not. */
    NOT_ASSURED,
    /** It surely does not. */
    DROPS_OUT,
    /** The duration is known too badly to tell. */
    TOO_CLOSE
  }

  /**
   * The loads that the program knows, in its data file's order.
   *
   * @throws mainsgap.settings.SettingsException if the file is damaged
   */
  public static List<LoadRideThrough> all() {
    return SettingsFile.readResource(LoadRideThrough.class, FILE)
        .root("load")
        .tables(
            "load",
            "name",
            "holds-milliseconds",
            "drops-after-milliseconds",
            "kind",
            "condition",
            "evidence",
            "source")
        .stream()
        .map(LoadRideThrough::of)
        .toList();
  }

  private static LoadRideThrough of(SettingsTable table) {
    return new LoadRideThrough(
        table.text("name"),
        table.number("holds-milliseconds", 0, MOST_MILLIS),
        table.has("drops-after-milliseconds")
            ? (Double) table.number("drops-after-milliseconds", 0, MOST_MILLIS)
            : null,
        table.choice("kind", Kind.class),
        table.text("condition"),
        table.choice("evidence", Evidence.class),
        table.text("source"));
  }

  /** What a gap of no voltage does to it. */
  public Answer answer(VoltageDeviation gap) {
    Answer least = answer(gap.leastMillis());
    return least == answer(gap.mostMillis()) || least == Answer.DROPS_OUT
        ? least
        : least == Answer.RIDES_THROUGH ? Answer.TOO_CLOSE : Answer.NOT_ASSURED;
  }

  private Answer answer(double millis) {
    if (millis <= holdsMillis) {
      return Answer.RIDES_THROUGH;
    }
    return dropsAfterMillis != null && millis > dropsAfterMillis
        ? Answer.DROPS_OUT
        : Answer.NOT_ASSURED;
  }

  /** The answer with the figure that it rests on. */
  public String sentence(VoltageDeviation gap) {
    return load
        + ": "
        + answer(gap).name().toLowerCase(Locale.ROOT).replace('_', ' ')
        + " (holds "
        + Wording.span(holdsMillis)
        + (dropsAfterMillis == null ? "" : ", gone after " + Wording.span(dropsAfterMillis))
        + ", "
        + kind.name().toLowerCase(Locale.ROOT)
        + "; "
        + condition
        + (evidence == Evidence.FROM_MEMORY ? "; from memory: indicative" : "")
        + ")";
  }
}

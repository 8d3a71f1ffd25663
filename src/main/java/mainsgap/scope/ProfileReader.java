package mainsgap.scope;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import mainsgap.scope.InstrumentProfile.Commands;
import mainsgap.scope.InstrumentProfile.Conventions;
import mainsgap.scope.InstrumentProfile.Identification;
import mainsgap.scope.InstrumentProfile.Parts;
import mainsgap.scope.InstrumentProfile.Probe;
import mainsgap.scope.InstrumentProfile.ReadBacks;
import mainsgap.scope.InstrumentProfile.Timing;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;

/** Reads a profile and checks it whole, so that no fault in it waits for the bench. */
final class ProfileReader {
  private static final int FORMAT = 1;

  /** More samples would not fit into one block of memory. */
  private static final int LARGEST_RECORD = 100_000_000;

  private static final int LONGEST_MILLIS = 60_000;
  private static final Duration USUAL_POLL = Duration.ofMillis(100);

  /** The times that a division can have. */
  private enum TimeBaseSteps {
    ANY,
    ONE_TWO_FIVE
  }

  private final SettingsTable root;
  private final TemplateReader templates;

  private ProfileReader(SettingsTable root) {
    this.root = root;
    this.templates = new TemplateReader(conventions(root));
  }

  static InstrumentProfile read(SettingsFile file) {
    SettingsTable root =
        file.root(
            "format",
            "about",
            "identification",
            "conventions",
            "limits",
            "commands",
            "triggers",
            "read-back",
            "state",
            "waveform",
            "timing");
    root.whole("format", FORMAT, FORMAT);
    return new ProfileReader(root).profile(file.name().replaceFirst("\\.toml$", ""));
  }

  private InstrumentProfile profile(String name) {
    TriggerCommands triggers = new TriggerReader(templates).read(root);
    Parts parts =
        new Parts(
            commands(),
            triggers,
            readBacks(),
            new StateReader(templates).read(root),
            new WaveformTransferReader(templates).read(root),
            templates.conventions(),
            timing());
    return new InstrumentProfile(
        name, root.text("about"), identification(), limits(triggers.methods()), parts);
  }

  private Identification identification() {
    SettingsTable table = root.table("identification", "idn-pattern", "probes");
    List<Probe> probes = new ArrayList<>();
    for (SettingsTable probe : table.tables("probes", "query", "reply")) {
      CommandTemplate query = templates.query(probe, "query", Set.of());
      probes.add(new Probe(query, TemplateReader.pattern(probe, "reply")));
    }
    Pattern pattern =
        table.has("idn-pattern") ? TemplateReader.pattern(table, "idn-pattern") : null;
    if (pattern == null && probes.isEmpty()) {
      throw root.complaint(
          "identification", "has neither 'idn-pattern' nor 'probes': give one of them");
    }
    return new Identification(pattern, List.copyOf(probes));
  }

  private static Conventions conventions(SettingsTable root) {
    SettingsTable table =
        root.table(
            "conventions",
            "probe-factor-told",
            "vertical-divisions",
            "horizontal-divisions",
            "record-lengths",
            "time-base-steps");
    if (!table.has("probe-factor-told")) {
      throw table.complaint("probe-factor-told", "is missing: add it to this table");
    }
    return new Conventions(
        table.flag("probe-factor-told", false),
        table.whole("vertical-divisions", 1, 100, 0),
        table.whole("horizontal-divisions", 1, 100, 0),
        steps(table));
  }

  private static RecordSteps steps(SettingsTable table) {
    boolean oneTwoFive =
        table.has("time-base-steps")
            && table.choice("time-base-steps", TimeBaseSteps.class) == TimeBaseSteps.ONE_TWO_FIVE;
    if (oneTwoFive && !table.has("horizontal-divisions")) {
      throw table.complaint(
          "time-base-steps", "are those of a division: set 'horizontal-divisions' to their number");
    }
    List<Integer> lengths = table.wholes("record-lengths", 1, LARGEST_RECORD);
    return new RecordSteps(lengths.stream().sorted().toList(), oneTwoFive);
  }

  private ScopeLimits limits(Set<CatchMethod> methods) {
    SettingsTable table =
        root.table(
            "limits",
            "channels",
            "smallest-full-scale-peak-volts",
            "largest-full-scale-peak-volts",
            "shortest-interval-seconds",
            "longest-interval-seconds",
            "smallest-record-samples",
            "largest-record-samples",
            "converter-bits",
            "time-base-ppm");
    double smallestPeak = table.number("smallest-full-scale-peak-volts", 1e-6, 1e6);
    double shortest = table.number("shortest-interval-seconds", 1e-12, 1);
    int smallestRecord = table.whole("smallest-record-samples", 1, LARGEST_RECORD);
    return new ScopeLimits(
        table.whole("channels", 1, 64),
        smallestPeak,
        table.number("largest-full-scale-peak-volts", smallestPeak, 1e6),
        shortest,
        table.number("longest-interval-seconds", shortest, 10),
        smallestRecord,
        table.whole("largest-record-samples", smallestRecord, LARGEST_RECORD),
        table.whole("converter-bits", 4, 32),
        table.number("time-base-ppm", 0, 10_000),
        methods);
  }

  private Commands commands() {
    SettingsTable table =
        root.table(
            "commands", "connect", "channel-on", "channel-off", "record", "arm", "force", "disarm");
    return new Commands(
        templates.commands(table, "connect", Set.of()),
        templates.atLeastOne(table, "channel-on", TemplateReader.VERTICAL),
        templates.commands(table, "channel-off", EnumSet.of(Placeholder.CHANNEL)),
        templates.atLeastOne(table, "record", TemplateReader.HORIZONTAL),
        templates.atLeastOne(table, "arm", Set.of()),
        templates.commands(table, "force", Set.of()),
        templates.atLeastOne(table, "disarm", Set.of()));
  }

  private ReadBacks readBacks() {
    if (!root.has("read-back")) {
      return new ReadBacks(Optional.empty(), Optional.empty(), Optional.empty());
    }
    SettingsTable table = root.table("read-back", "range", "samples", "interval");
    return new ReadBacks(
        readBack(
            table,
            "range",
            Placeholder.PEAK_VOLTS,
            Placeholder.PEAK_TO_PEAK_VOLTS,
            Placeholder.VOLTS_PER_DIVISION),
        readBack(table, "samples", Placeholder.SAMPLES),
        readBack(table, "interval", Placeholder.INTERVAL_SECONDS, Placeholder.SAMPLE_RATE_HERTZ));
  }

  private Optional<ReadBack> readBack(SettingsTable table, String key, Placeholder... quantities) {
    return table
        .optionalTable(key, "query", "gives")
        .map(
            inner ->
                new ReadBack(
                    templates.query(inner, "query", EnumSet.of(Placeholder.CHANNEL)),
                    templates.quantity(inner, "gives", List.of(quantities))));
  }

  private Timing timing() {
    return root.optionalTable(
            "timing", "settle-millis", "settled-query", "poll-millis", "gap-millis")
        .map(this::timing)
        .orElse(new Timing(Duration.ZERO, Optional.empty(), USUAL_POLL, Duration.ZERO));
  }

  private Timing timing(SettingsTable table) {
    int usualPollMillis = (int) USUAL_POLL.toMillis();
    return new Timing(
        Duration.ofMillis(table.whole("settle-millis", 0, LONGEST_MILLIS, 0)),
        templates.optionalQuery(table, "settled-query", Set.of()),
        Duration.ofMillis(table.whole("poll-millis", 1, LONGEST_MILLIS, usualPollMillis)),
        Duration.ofMillis(table.whole("gap-millis", 0, LONGEST_MILLIS, 0)));
  }
}

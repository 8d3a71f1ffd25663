package mainsgap.desk.rig;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import mainsgap.bench.ProbedChannel;

/** What settings must be beside each other. */
final class RigRules {
  private static final Set<String> TAKEN_NAMES = Set.of("serial", "firmware", "load", "seed");

  private final RigFields fields;

  RigRules(RigFields fields) {
    this.fields = fields;
  }

  /** Writes to each setting what is wrong with it beside the others. */
  void apply() {
    scope();
    unit();
    lineToEarth();
    fields.clips().forEach(this::clip);
    clamp();
    ownChannels();
    conditions();
  }

  /** What is wrong in {@code part}; the first of it. */
  Optional<String> complaint(Part part) {
    return fields.of(part).stream()
        .map(Field::complaint)
        .filter(sentence -> !sentence.isEmpty())
        .findFirst();
  }

  private void scope() {
    ScopeFields scope = fields.scope;
    scope.resource.complainBesideOthers(
        scope.isReal() && scope.resource.text().isEmpty()
            ? "no instrument is chosen: find one, or type its resource name"
            : "");
  }

  private void unit() {
    UnitFields unit = fields.unit;
    unit.name.complainBesideOthers(
        fields.scope.isReal() && unit.name.text().isEmpty()
            ? "the unit has no name: write what tells this specimen from others"
            : "");
    unit.millis.complainBesideOthers(
        unit.millis.text().isEmpty() && !unit.printed.text().isEmpty()
            ? "the claim is printed, but its time is not said: write the milliseconds"
            : "");
  }

  private void lineToEarth() {
    WallFields wall = fields.wall;
    Double declared = wall.lineToEarthVolts.value();
    wall.lineToEarthVolts.complainBesideOthers(
        declared != null && declared < wall.nominal() / 2
            ? "the line to earth is "
                + Readings.plain(declared)
                + " V, but of two conductors with "
                + Readings.plain(wall.nominal())
                + " V between them one has at least half of it to earth: write the larger one's"
            : "");
  }

  private void clip(ClipFields clip) {
    boolean connected = clip.isConnected();
    need(clip.number, connected);
    need(clip.probeFactor, connected);
    need(clip.category, connected);
    need(clip.ratedVolts, connected);
    ProbedChannel channel = clip.channel();
    if (channel != null) {
      clip.ratedVolts.complainBesideOthers(
          channel
              .complaint(fields.wall.toEarth())
              .map(complaint -> clip.ratedVolts.name() + " " + complaint)
              .orElse(""));
    }
  }

  private void clamp() {
    boolean connected = fields.clamp.isConnected();
    need(fields.clamp.number, connected);
    need(fields.clamp.amperesPerVolt, connected);
    need(fields.clamp.peakAmperes, connected);
  }

  private static void need(Field<?> field, boolean needed) {
    field.complainBesideOthers(
        needed && field.text().isEmpty() ? field.name() + " is not set" : "");
  }

  private void ownChannels() {
    Map<Integer, String> taken = new HashMap<>();
    for (ClipFields clip : fields.clips()) {
      if (clip.isConnected()) {
        take(taken, clip.number, clip.role.words());
      }
    }
    if (fields.clamp.isConnected()) {
      take(taken, fields.clamp.number, "load current");
    }
  }

  private static void take(Map<Integer, String> taken, Field<Integer> number, String role) {
    Integer channel = number.value();
    String other = channel == null ? null : taken.putIfAbsent(channel, role);
    if (other != null) {
      number.complainBesideOthers(
          "channel " + channel + " is the " + other + "'s: connect the " + role + " to another");
    }
  }

  private void conditions() {
    Set<String> seen = new HashSet<>();
    for (LoadFields.Condition one : fields.load.conditions) {
      String name = one.name().text().toLowerCase(Locale.ROOT);
      one.name().complainBesideOthers(complaintAbout(one, name, seen));
      one.words()
          .complainBesideOthers(
              !name.isEmpty() && one.words().text().isEmpty()
                  ? "'" + name + "' says nothing: write its words, or take it out"
                  : "");
    }
  }

  private static String complaintAbout(LoadFields.Condition one, String name, Set<String> seen) {
    if (name.isEmpty()) {
      return one.words().text().isEmpty()
          ? ""
          : "these words have no name: write one, or take them out";
    }
    if (TAKEN_NAMES.contains(name)) {
      return "'" + name + "' has its own place on this page: choose another name";
    }
    return seen.add(name) ? "" : "'" + name + "' stands here twice: choose another name";
  }

  /** What is typed and cannot be read, or is missing where a file needs it. */
  List<String> complaintsAboutText() {
    return Stream.of(Part.values())
        .flatMap(
            part ->
                fields.of(part).stream()
                    .filter(field -> !field.complaint().isEmpty())
                    .filter(field -> !field.text().isEmpty() || isNeededInAFile(part))
                    .map(field -> part.title() + ": " + field.complaint()))
        .toList();
  }

  private static boolean isNeededInAFile(Part part) {
    return part.role().isPresent();
  }

  /** All that is wrong, part by part. */
  List<String> complaints() {
    return Stream.of(Part.values())
        .flatMap(part -> complaint(part).map(rest -> part.title() + ": " + rest).stream())
        .toList();
  }
}

package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import mainsgap.bench.ProbedChannel.Category;
import mainsgap.bench.RigCheckEnd.Seen;
import mainsgap.desk.rig.PartState.Danger;
import mainsgap.desk.rig.PartState.Level;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/** The short words in place at each part. */
final class PartWords {
  static final String NOT_SET = "not set";

  private final RigFields fields;
  private final RigRules rules;

  PartWords(RigFields fields, RigRules rules) {
    this.fields = fields;
    this.rules = rules;
  }

  /** The state of {@code part}; {@code seen} is null where nothing of this rig was looked at. */
  PartState of(Part part, @Nullable Seen seen) {
    List<String> words =
        switch (part) {
          case WALL -> wall();
          case SWITCH -> mainsSwitch();
          case UNIT -> unit();
          case LOAD -> load();
          case SCOPE -> scope();
          case CURRENT_CLAMP -> clamp();
          case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP -> clip(fields.clip(part));
        };
    String live = seen == null ? "" : LiveWords.of(part, seen);
    return new PartState(level(part, seen), words, danger(part), live);
  }

  private Level level(Part part, @Nullable Seen seen) {
    if (!isThere(part)) {
      return Level.ABSENT;
    }
    if (rules.complaint(part).isPresent()) {
      return Level.WRONG;
    }
    if (seen == null || part.role().isEmpty()) {
      return Level.SET;
    }
    return LiveWords.complaintsAbout(part, seen).isEmpty() ? Level.RIGHT : Level.WRONG;
  }

  private boolean isThere(Part part) {
    return switch (part) {
      case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP -> fields.clip(part).isConnected();
      case CURRENT_CLAMP -> fields.clamp.isConnected();
      case WALL, SWITCH, UNIT, LOAD, SCOPE -> true;
    };
  }

  private List<String> wall() {
    return List.of(
        Readings.plain(fields.wall.nominal())
            + " V, "
            + Readings.plain(fields.wall.frequency())
            + " Hz",
        Readings.plain(fields.wall.toEarth()) + " V to earth");
  }

  private List<String> mainsSwitch() {
    int trials = fields.mainsSwitch.trials.valueOr(SwitchFields.USUAL_TRIALS);
    return List.of(
        fields.kept().isSwitchCommanded() ? "moved by the program" : "moved by hand",
        (trials == 1 ? "1 trial: " : trials + " trials: ")
            + (fields.mainsSwitch.event.valueOr(Event.LOSS) == Event.LOSS
                ? "mains lost"
                : "mains back"));
  }

  private List<String> unit() {
    List<String> words = new ArrayList<>();
    String name = fields.unit.name.text();
    words.add(
        name.isEmpty() && !fields.scope.isReal()
            ? "simulated " + fields.scope.simulated.text()
            : setOr(name));
    DeclaredClaim claim = fields.unit.claim();
    words.add(claim == null ? "nothing declared" : "declared " + claim.asPrinted());
    return words;
  }

  private List<String> load() {
    int more = fields.load.named().size();
    return List.of(
        setOr(fields.load.description.text()),
        more == 0 ? "" : more == 1 ? "1 condition" : more + " conditions");
  }

  private List<String> scope() {
    if (fields.scope.isReal()) {
      return List.of(setOr(fields.scope.resource.text()));
    }
    Integer seed = fields.scope.seed.value();
    return List.of(
        "simulated: " + fields.scope.simulated.text(),
        seed == null ? "another chance each time" : "seed " + seed);
  }

  private static List<String> clip(ClipFields clip) {
    if (!clip.isConnected()) {
      return List.of("not connected");
    }
    return List.of(channel(clip.number) + ", ×" + setOr(clip.probeFactor.text()));
  }

  private List<String> clamp() {
    return fields.clamp.isConnected()
        ? List.of(
            channel(fields.clamp.number)
                + ", "
                + setOr(fields.clamp.amperesPerVolt.text())
                + " A for each volt")
        : List.of("not connected");
  }

  private static String channel(Field<Integer> number) {
    return number.text().isEmpty() ? "channel " + NOT_SET : "channel " + number.text();
  }

  /** What a person touches there, and whether what he holds stands it. */
  private Danger danger(Part part) {
    Optional<ChannelRole> role = part.role();
    if (role.isEmpty() || part == Part.CURRENT_CLAMP || !isThere(part)) {
      return Danger.NONE;
    }
    double toEarth = fields.wall.toEarth();
    String live = Readings.plain(toEarth) + " V to earth: ";
    Category category = fields.clip(part).category.value();
    Double rated = fields.clip(part).ratedVolts.value();
    if (category == null || rated == null) {
      return new Danger(live + "the probe's rating is " + NOT_SET, false);
    }
    String probe = category + " " + Readings.plain(rated) + " V probe";
    boolean stands = toEarth <= rated;
    return new Danger(live + probe + (stands ? " stands it" : " does NOT stand it"), stands);
  }

  private static String setOr(String text) {
    return text.isEmpty() ? NOT_SET : text;
  }
}

package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import javafx.collections.ListChangeListener;
import mainsgap.bench.ProbedChannel;
import mainsgap.bench.RigSheet;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/** All settings of a rig, as they are typed. For the UI thread. */
final class RigFields {
  final WallFields wall = new WallFields();
  final SwitchFields mainsSwitch = new SwitchFields();
  final UnitFields unit = new UnitFields();
  final LoadFields load = new LoadFields();
  final ScopeFields scope = new ScopeFields();
  final ClampFields clamp = new ClampFields();
  private final Map<Part, ClipFields> clips = new EnumMap<>(Part.class);
  private RigSheet.Kept kept = RigSheet.Kept.NONE;
  private final List<Runnable> listeners = new ArrayList<>();
  private boolean showing;

  /** Nothing is said yet. */
  RigFields() {
    for (Part part : List.of(Part.MAINS_CLIP, Part.OUTPUT_CLIP, Part.SECOND_LEG_CLIP)) {
      clips.put(part, new ClipFields(part.role().orElseThrow()));
    }
    Stream.of(Part.values()).flatMap(part -> of(part).stream()).forEach(this::hear);
    load.conditions.addListener(
        (ListChangeListener<LoadFields.Condition>)
            change -> {
              while (change.next()) {
                change.getAddedSubList().stream()
                    .flatMap(one -> Stream.of(one.name(), one.words()))
                    .forEach(this::hear);
              }
              changed();
            });
  }

  /** What runs once something was typed. */
  void whenChanged(Runnable listener) {
    listeners.add(listener);
  }

  /** The settings of a part. */
  List<Field<?>> of(Part part) {
    return switch (part) {
      case WALL -> wall.all();
      case SWITCH -> mainsSwitch.all();
      case UNIT -> unit.all();
      case LOAD -> load.all();
      case SCOPE -> scope.all();
      case CURRENT_CLAMP -> clamp.all();
      case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP -> clip(part).all();
    };
  }

  /** The probe of one of the clips. */
  ClipFields clip(Part part) {
    return Objects.requireNonNull(clips.get(part), () -> part + " has no probe");
  }

  /** All probes. */
  List<ClipFields> clips() {
    return List.copyOf(clips.values());
  }

  /** What is carried along from file to file. */
  RigSheet.Kept kept() {
    return kept;
  }

  /** A hand moves the switch from now on. */
  void moveByHand() {
    keep(
        new RigSheet.Kept(
            "", kept.marker(), kept.externalInput(), RigSheet.Kept.NONE.switchWords(), false));
  }

  void keep(RigSheet.Kept tables) {
    kept = tables;
    changed();
  }

  /** Whether what is typed now comes from a file. */
  boolean isShowing() {
    return showing;
  }

  /** Types all that {@code sheet} says. */
  void show(RigSheet sheet) {
    showing = true;
    scope.show(sheet.instrument());
    unit.show(sheet.unit(), sheet.claim());
    unit.settleSeconds.type(typed(sheet.supply().settleSeconds()));
    unit.longestCheckSeconds.type(typed(sheet.supply().longestCheckSeconds()));
    wall.nominalVolts.type(typed(sheet.supply().nominalVolts()));
    wall.frequencyHertz.type(typed(sheet.supply().frequencyHertz()));
    wall.lineToEarthVolts.type(typed(sheet.supply().lineToEarthVolts()));
    clips.values().forEach(clip -> clip.show(sheet.channels().get(clip.role)));
    clamp.show(sheet.loadCurrent());
    mainsSwitch.show(sheet.wish());
    load.show(sheet.load(), sheet.conditions());
    kept = sheet.kept();
    showing = false;
    changed();
  }

  /** What is typed; what cannot be used is left out. */
  RigSheet sheet() {
    Map<ChannelRole, ProbedChannel> channels = new EnumMap<>(ChannelRole.class);
    for (ClipFields clip : clips.values()) {
      ProbedChannel channel = clip.channel();
      if (channel != null) {
        channels.put(clip.role, channel);
      }
    }
    return new RigSheet(
        scope.instrument(),
        unit.unit(),
        unit.claim(),
        new RigSheet.Supply(
            wall.nominalVolts.value(),
            wall.frequencyHertz.value(),
            wall.lineToEarthVolts.value(),
            unit.settleSeconds.value(),
            unit.longestCheckSeconds.value()),
        channels,
        clamp.clamp(),
        mainsSwitch.wish(),
        load.description.value(),
        load.named(),
        kept);
  }

  private static String typed(@Nullable Double number) {
    return number == null ? "" : Readings.plain(number);
  }

  private void hear(Field<?> field) {
    field.textProperty().addListener((property, was, is) -> changed());
  }

  private void changed() {
    if (!showing) {
      listeners.forEach(Runnable::run);
    }
  }
}

package mainsgap.desk.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;

/** The settings of the parts that are few rows. */
final class PartForms {
  private final RigModel model;

  PartForms(RigModel model) {
    this.model = model;
  }

  /** The settings of {@code part}. */
  Rows of(Part part) {
    return switch (part) {
      case WALL -> wall();
      case SWITCH -> new SwitchForm(model).rows();
      case UNIT -> unit();
      case LOAD -> new LoadForm(model).rows();
      case SCOPE -> new ScopeForm(model).rows();
      case CURRENT_CLAMP -> new ClipForms(model).clamp();
      case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP -> new ClipForms(model).clip(part);
    };
  }

  private Rows wall() {
    WallFields wall = model.fields().wall;
    Rows rows = new Rows(model.lockedProperty());
    rows.typed(wall.nominalVolts, "Nominal voltage, V RMS", "230");
    rows.typed(wall.frequencyHertz, "Nominal frequency, Hz", "50");
    rows.typed(wall.lineToEarthVolts, "Largest voltage of a line to earth, V RMS", "as nominal");
    rows.note(
        "This is what each probe must stand. On a split supply, write that of the larger line;"
            + " where you do not know, leave it empty: the nominal voltage holds.");
    return rows;
  }

  private Rows unit() {
    UnitFields unit = model.fields().unit;
    Rows rows = new Rows(model.lockedProperty());
    rows.typed(unit.name, "Name of this specimen", "what tells it from others");
    rows.typed(unit.serial, "Serial number", "");
    rows.typed(unit.firmware, "Firmware", "");
    rows.heading("What its maker declares");
    rows.typed(unit.printed, "As it is printed", "< 20 ms");
    rows.typed(unit.millis, "Declared transfer time, ms", "20");
    rows.oneOf(unit.relation, "It is printed as", relations());
    rows.chosen(unit.kind, "It is", kinds());
    rows.typed(unit.definition, "What the maker counts", UnitFields.UNKNOWN);
    rows.typed(unit.source, "Where it is printed", UnitFields.UNKNOWN);
    rows.typed(unit.date, "Read there on", "2026-11-25");
    rows.heading("The rest that it needs");
    rows.typed(unit.settleSeconds, "Settling between trials, s", "10 on a real rig");
    rows.typed(unit.longestCheckSeconds, "Longest check of mains that is back, s", "300");
    return rows;
  }

  private static Map<String, String> relations() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put(UnitFields.Relation.BELOW.sign(), "less than (<)");
    words.put(UnitFields.Relation.UP_TO.sign(), "up to (≤)");
    return words;
  }

  private static Map<String, String> kinds() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put(UnitFields.word(DeclaredClaim.Kind.MAXIMUM), "a maximum");
    words.put(UnitFields.word(DeclaredClaim.Kind.TYPICAL), "typical: compared, not judged");
    words.put(
        UnitFields.word(DeclaredClaim.Kind.UNSTATED), "not stated: judged as a maximum, and said");
    return words;
  }

  static Map<String, String> events() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put(Event.LOSS.word(), "loss of mains");
    words.put(Event.RESTORATION.word(), "restoration");
    return words;
  }
}

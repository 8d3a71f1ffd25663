package mainsgap.desk.rig;

import java.util.List;
import java.util.Locale;
import mainsgap.bench.RigSheet;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/** The specimen, what its maker claims, and the rest that it needs. */
final class UnitFields {
  static final String UNKNOWN = "unknown";
  private static final double LONGEST_MILLIS = 3_600_000;
  private static final double LONGEST_WAIT_SECONDS = 3600;

  /** How a declared time is printed. */
  enum Relation {
    UP_TO("<="),
    BELOW("<");

    private final String sign;

    Relation(String sign) {
      this.sign = sign;
    }

    String sign() {
      return sign;
    }
  }

  final Field<String> name = new Field<>("unit.name", "the unit's name", Readings.words());
  final Field<String> serial = new Field<>("unit.serial", "the serial number", Readings.words());
  final Field<String> firmware = new Field<>("unit.firmware", "the firmware", Readings.words());
  final Field<Double> millis =
      new Field<>("claim.millis", "the declared time", Readings.number(0, LONGEST_MILLIS, "ms"));
  final Field<Relation> relation =
      new Field<>(
          "claim.relation",
          "the sign before the declared time",
          Readings.choice(Relation.class, Relation::sign));
  final Field<DeclaredClaim.Kind> kind =
      new Field<>(
          "claim.kind",
          "the kind of the claim",
          Readings.choice(DeclaredClaim.Kind.class, UnitFields::word));
  final Field<String> printed =
      new Field<>("claim.printed", "the claim as printed", Readings.words());
  final Field<String> definition =
      new Field<>("claim.definition", "the maker's definition", Readings.words());
  final Field<String> source =
      new Field<>("claim.source", "the source of the claim", Readings.words());
  final Field<String> date =
      new Field<>("claim.date", "the day on which it was read", Readings.date());
  final Field<Double> settleSeconds =
      new Field<>(
          "unit.settle", "the settling time", Readings.number(0, LONGEST_WAIT_SECONDS, "s"));
  final Field<Double> longestCheckSeconds =
      new Field<>(
          "unit.longest-check",
          "the longest check of mains",
          Readings.number(0, LONGEST_WAIT_SECONDS, "s"));

  List<Field<?>> all() {
    return List.of(
        name,
        serial,
        firmware,
        millis,
        relation,
        kind,
        printed,
        definition,
        source,
        date,
        settleSeconds,
        longestCheckSeconds);
  }

  void show(RigSheet.Unit unit, @Nullable DeclaredClaim claim) {
    name.type(unit.name());
    serial.type(unit.serial());
    firmware.type(unit.firmware());
    millis.type(claim == null ? null : Readings.plain(claim.millis()));
    relation.type(
        (claim != null && claim.strictlyBelow() ? Relation.BELOW : Relation.UP_TO).sign());
    kind.type(word(claim == null ? DeclaredClaim.Kind.UNSTATED : claim.kind()));
    printed.type(claim == null ? null : claim.asPrinted());
    definition.type(known(claim == null ? UNKNOWN : claim.definition()));
    source.type(known(claim == null ? UNKNOWN : claim.source()));
    date.type(known(claim == null ? UNKNOWN : claim.date()));
  }

  RigSheet.Unit unit() {
    return new RigSheet.Unit(name.value(), serial.value(), firmware.value());
  }

  /** The declared time; null where none is typed. */
  @Nullable DeclaredClaim claim() {
    Double declared = millis.value();
    if (declared == null) {
      return null;
    }
    Relation sign = relation.valueOr(Relation.UP_TO);
    return new DeclaredClaim(
        printed.valueOr(sign.sign() + " " + Readings.plain(declared) + " ms"),
        declared,
        sign == Relation.BELOW,
        kind.valueOr(DeclaredClaim.Kind.UNSTATED),
        definition.valueOr(UNKNOWN),
        source.valueOr(UNKNOWN),
        date.valueOr(UNKNOWN));
  }

  static String word(DeclaredClaim.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }

  /** What nobody knows needs no typing. */
  private static @Nullable String known(String words) {
    return words.equals(UNKNOWN) ? null : words;
  }
}

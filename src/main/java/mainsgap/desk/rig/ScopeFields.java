package mainsgap.desk.rig;

import java.util.List;
import java.util.Locale;
import mainsgap.bench.RigSheet;
import mainsgap.bench.SimulatedUnits;
import mainsgap.desk.rig.Reading.BadTextException;

/** What a series runs on. */
final class ScopeFields {
  private static final int HIGHEST_SEED = 1_000_000_000;

  /** The two things that a series can run on. */
  enum Runs {
    SIMULATED,
    INSTRUMENT;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  final Field<Runs> runs =
      new Field<>("scope.runs", "what it runs on", Readings.choice(Runs.class, Runs::word));
  final Field<String> simulated =
      new Field<>("scope.simulated", "the simulated unit", ScopeFields::simulatedUnit);
  final Field<Integer> seed =
      new Field<>("scope.seed", "the seed", Readings.whole(0, HIGHEST_SEED));
  final Field<String> resource =
      new Field<>("scope.resource", "the resource name", Readings.resource());
  final Field<String> profile = new Field<>("scope.profile", "the profile", Readings.words());

  List<Field<?>> all() {
    return List.of(runs, simulated, seed, resource, profile);
  }

  boolean isReal() {
    return runs.value() == Runs.INSTRUMENT;
  }

  void show(RigSheet.Instrument instrument) {
    runs.type((instrument.simulated() == null ? Runs.INSTRUMENT : Runs.SIMULATED).word());
    simulated.type(
        instrument.simulated() == null ? SimulatedUnits.DEFAULT : instrument.simulated());
    seed.type(instrument.seed());
    resource.type(instrument.resource());
    profile.type(instrument.profile());
  }

  RigSheet.Instrument instrument() {
    return isReal()
        ? new RigSheet.Instrument(resource.value(), null, null, profile.value())
        : new RigSheet.Instrument(null, simulated.value(), seed.value(), profile.value());
  }

  private static String simulatedUnit(String text) {
    if (!SimulatedUnits.names().contains(text)) {
      throw new BadTextException(
          "is '" + text + "'; allowed: " + String.join(", ", SimulatedUnits.names()));
    }
    return text;
  }
}

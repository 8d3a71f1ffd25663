package mainsgap.desk.rig;

import java.util.Map;
import mainsgap.bench.CatchWish;
import mainsgap.bench.ProbedChannel;
import mainsgap.bench.RigSheet;
import mainsgap.bench.SimulatedUnits;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/** The rig that a newcomer finds: the simulated bench, with an invented unit. */
final class ExampleRig {
  private static final int SEED = 7;
  private static final double PROBE_FACTOR = 100;
  private static final double RATED_VOLTS = 600;
  private static final String INVENTED = "invented, for the simulated bench";

  private ExampleRig() {}

  static RigSheet sheet() {
    return new RigSheet(
        new RigSheet.Instrument(null, SimulatedUnits.DEFAULT, SEED, null),
        new RigSheet.Unit("Lumengrove 600 (invented)", "LG-0001", null),
        new DeclaredClaim(
            "< 20 ms", 20, true, DeclaredClaim.Kind.MAXIMUM, "unknown", INVENTED, "unknown"),
        new RigSheet.Supply(230.0, 50.0, 230.0, null, null),
        Map.of(ChannelRole.OUTPUT, probe(1), ChannelRole.MAINS, probe(2)),
        null,
        new RigSheet.Wish(SwitchFields.USUAL_TRIALS, Event.LOSS, CatchWish.AUTOMATIC),
        "60 W, resistive (invented)",
        Map.of(),
        RigSheet.Kept.NONE);
  }

  /** Takes out what was invented, and has not been changed, before a real unit is measured. */
  static void forgetInvented(RigFields fields) {
    RigSheet example = sheet();
    DeclaredClaim claim = example.claim();
    if (claim != null && claim.equals(fields.unit.claim())) {
      fields.unit.millis.type(null);
      fields.unit.printed.type(null);
      fields.unit.source.type(null);
    }
    forget(fields.unit.name, example.unit().name());
    forget(fields.unit.serial, example.unit().serial());
    forget(fields.load.description, example.load());
  }

  private static void forget(Field<String> field, @Nullable String words) {
    if (field.text().equals(words)) {
      field.type(null);
    }
  }

  private static ProbedChannel probe(int number) {
    return new ProbedChannel(number, PROBE_FACTOR, ProbedChannel.Category.CAT_III, RATED_VOLTS);
  }
}

package mainsgap.desk.trials;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.bench.CatchWish;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.SeriesPlan;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.desk.manners.SeriesSource;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/** A rig that is set already, logging into one folder. */
final class SetRig implements SeriesSource {
  private static final long SEED = 7;

  private final Path folder;
  private final ReadOnlyStringWrapper whyNotReady = new ReadOnlyStringWrapper("");
  private InstrumentChoice instrument = new InstrumentChoice.Simulated("standby", SEED);
  private @Nullable Path rigFile;
  private String declared = "20 ms";
  private double declaredMillis = 20;
  private int trials = 5;
  private CatchWish catching = CatchWish.AUTOMATIC;
  private Duration settle = Duration.ZERO;
  private Duration triggerWait = Duration.ofSeconds(10);

  SetRig(Path folder) {
    this.folder = folder;
  }

  SetRig unit(String simulated) {
    instrument = new InstrumentChoice.Simulated(simulated, SEED);
    return this;
  }

  /** An instrument by its resource name, with {@code table} added to its rig file. */
  SetRig real(String resource, String profile, String table) {
    instrument = new InstrumentChoice.Real(resource);
    rigFile = folder.resolve("rig.toml");
    try {
      Files.writeString(rigFile, rigText(profile) + table);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return this;
  }

  SetRig trials(int wanted) {
    trials = wanted;
    return this;
  }

  SetRig catching(CatchWish wish) {
    catching = wish;
    return this;
  }

  SetRig declared(double millis) {
    declaredMillis = millis;
    declared = millis + " ms";
    return this;
  }

  SetRig settle(Duration rest) {
    settle = rest;
    return this;
  }

  SetRig triggerWait(Duration longest) {
    triggerWait = longest;
    return this;
  }

  void notReady(String why) {
    whyNotReady.set(why);
  }

  @Override
  public ReadOnlyStringProperty whyNotReady() {
    return whyNotReady.getReadOnlyProperty();
  }

  @Override
  public SeriesRequest request() {
    return new SeriesRequest(
        instrument,
        null,
        DeclaredClaim.ofMillis(declaredMillis, declared),
        DecisionRule.GUARDED,
        Event.LOSS,
        null,
        null,
        trials,
        SessionPlace.newIn(folder),
        rigFile,
        true,
        catching,
        SeriesPlan.NONE,
        settle,
        triggerWait,
        1);
  }

  private static String rigText(String profile) {
    return """
        [instrument]
        profile = "%s"

        [unit]
        name = "Invented Lumengrove 600"

        [supply]
        nominal-volts = 230
        frequency-hertz = 50

        [channels.output]
        number = 1
        probe-factor = 100
        category = "cat-iii"
        rated-volts = 600

        [channels.mains]
        number = 2
        probe-factor = 100
        category = "cat-iii"
        rated-volts = 600

        """
        .formatted(profile);
  }
}

package mainsgap.desk.findings;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import mainsgap.bench.CatchWish;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.KeptSession;
import mainsgap.bench.Series;
import mainsgap.bench.SeriesListener;
import mainsgap.bench.SeriesPlan;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.session.Addition;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/** Session files in one folder, made by series on the simulated bench. */
final class SimulatedSessions {
  private final Path folder;
  private int seed = 7;

  SimulatedSessions(Path folder) {
    this.folder = folder;
  }

  /** A series of a unit under an invented name; {@code declaredMillis} null declares nothing. */
  Path series(String simulated, String name, int trials, @Nullable Double declaredMillis) {
    Path file = folder.resolve(name.toLowerCase(Locale.ROOT).replace(' ', '-') + ".mainsgap");
    SeriesRequest request =
        new SeriesRequest(
            new InstrumentChoice.Simulated(simulated, seed++),
            name,
            declaredMillis == null
                ? null
                : DeclaredClaim.ofMillis(declaredMillis, declaredMillis + " ms"),
            DecisionRule.GUARDED,
            Event.LOSS,
            null,
            null,
            trials,
            new SessionPlace(file, false),
            null,
            true,
            CatchWish.AUTOMATIC,
            SeriesPlan.NONE,
            Duration.ZERO,
            Duration.ofSeconds(10),
            1);
    Object unused = Series.of(request).run(new SeriesListener() {}, new StopRequest());
    return file;
  }

  /** The usual one. */
  Path usual(String name) {
    return series("standby", name, 3, 20.0);
  }

  void setAside(Path file, int trial, String reason) {
    KeptSession unused =
        KeptSession.add(
            file, new Addition.SetAside(trial, reason), Instant.parse("2026-03-01T12:00:00Z"));
  }
}

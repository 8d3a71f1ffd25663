package mainsgap.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import mainsgap.session.Session;
import mainsgap.session.SessionReader;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/** Requests for series that log into one folder. */
final class Requests {
  private static final long SEED = 7;
  private static final DeclaredClaim CLAIM = DeclaredClaim.ofMillis(20, "20 ms");

  private final Path folder;

  Requests(Path folder) {
    this.folder = folder;
  }

  Path file() {
    return folder.resolve("session.mainsgap");
  }

  Session session() {
    try (SessionReader reader = SessionReader.open(file())) {
      return reader.session();
    }
  }

  SeriesRequest simulated(String unit, int trials, CatchWish catching) {
    return request(new InstrumentChoice.Simulated(unit, SEED), trials, catching, false, null);
  }

  SeriesRequest real(String resource, int trials, CatchWish catching) {
    return real(resource, trials, catching, rig(100));
  }

  SeriesRequest real(String resource, int trials, CatchWish catching, Path rig) {
    return request(new InstrumentChoice.Real(resource), trials, catching, true, rig);
  }

  SeriesRequest request(
      InstrumentChoice instrument,
      int trials,
      CatchWish catching,
      boolean cautionsRead,
      @Nullable Path rig) {
    return new SeriesRequest(
        instrument,
        null,
        CLAIM,
        DecisionRule.GUARDED,
        Event.LOSS,
        null,
        null,
        trials,
        new SessionPlace(file(), false),
        rig,
        cautionsRead,
        catching,
        SeriesPlan.NONE,
        Duration.ZERO,
        Duration.ofSeconds(10),
        1);
  }

  SeriesRequest goingOn(SeriesRequest request) {
    return with(
        request.event(),
        request,
        request.nominalVolts(),
        new SessionPlace(file(), true),
        request.triggerWait());
  }

  /** The same, with a trigger wait that a test can sit through. */
  SeriesRequest impatient(SeriesRequest request) {
    return with(
        request.event(),
        request,
        request.nominalVolts(),
        request.session(),
        Duration.ofMillis(300));
  }

  /** The same for the way back to mains. */
  SeriesRequest back(SeriesRequest request) {
    return with(
        Event.RESTORATION,
        request,
        request.nominalVolts(),
        request.session(),
        request.triggerWait());
  }

  /** The same on another supply. */
  SeriesRequest ofNominal(double volts, SeriesRequest request) {
    return with(request.event(), request, volts, request.session(), request.triggerWait());
  }

  /** The same for another event, with a plan. */
  SeriesRequest planned(Event event, SeriesPlan plan, SeriesRequest request) {
    return new SeriesRequest(
        request.instrument(),
        request.unit(),
        request.claim(),
        request.rule(),
        event,
        request.nominalVolts(),
        request.frequencyHertz(),
        request.trials(),
        request.session(),
        request.rigFile(),
        request.cautionsRead(),
        request.catching(),
        plan,
        request.settle(),
        request.triggerWait(),
        request.maxRepeats());
  }

  private static SeriesRequest with(
      Event event,
      SeriesRequest request,
      @Nullable Double nominalVolts,
      SessionPlace session,
      @Nullable Duration triggerWait) {
    return new SeriesRequest(
        request.instrument(),
        request.unit(),
        request.claim(),
        request.rule(),
        event,
        nominalVolts,
        request.frequencyHertz(),
        request.trials(),
        session,
        request.rigFile(),
        request.cautionsRead(),
        request.catching(),
        request.plan(),
        request.settle(),
        triggerWait,
        request.maxRepeats());
  }

  /** A rig file that names its profile, which saves asking for it. */
  Path rigFor(String profile, int factor) {
    String named = "[instrument]\nprofile = \"" + profile + "\"\n\n" + text(factor);
    return write("rig-" + profile + ".toml", named);
  }

  /** A rig file without a mains channel. */
  Path rigOfOutput(String profile) {
    String text = text(100);
    int from = text.indexOf("[channels.mains]");
    String alone = text.substring(0, from) + text.substring(text.indexOf("[load]"));
    return write("rig-output.toml", "[instrument]\nprofile = \"" + profile + "\"\n\n" + alone);
  }

  /** A rig file of a unit that checks the mains for seconds only, with one more table. */
  Path rigWith(String table) {
    String quick =
        text(100).replace("settle-seconds = 1", "settle-seconds = 1\nlongest-check-seconds = 5");
    return write(
        "rig.toml", "[instrument]\nprofile = \"ten-field-preamble\"\n\n" + quick + "\n" + table);
  }

  /** A rig file whose output probe has {@code factor}. */
  Path rig(int factor) {
    return write("rig.toml", text(factor));
  }

  private static String text(int factor) {
    return """
        [unit]
        name = "Invented Lumengrove 600"
        serial = "LG-0001"

        [supply]
        nominal-volts = 230
        frequency-hertz = 50
        settle-seconds = 1

        [channels.output]
        number = 1
        probe-factor = %d
        category = "cat-iii"
        rated-volts = 600

        [channels.mains]
        number = 2
        probe-factor = 100
        category = "cat-iii"
        rated-volts = 600

        [load]
        description = "60 W, resistive"

        [conditions]
        room = "21 degrees"
        """
        .formatted(factor);
  }

  Path write(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

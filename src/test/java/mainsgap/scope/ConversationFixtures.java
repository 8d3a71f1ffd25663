package mainsgap.scope;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import mainsgap.link.ConversationFile;
import mainsgap.link.ResourceName;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.signal.ChannelRole;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/** Makes the recorded conversations again, one for each simulated instrument. */
final class ConversationFixtures {
  static final Path FOLDER = Path.of("test-fixtures", "conversations");

  /** What hangs on the simulated bench, as far as a short record needs it. */
  static final CaptureWalk.Connected CONNECTED =
      new CaptureWalk.Connected(
          Map.of(ChannelRole.OUTPUT, Input.ofSupply(1, SimulatedBench.PROBE_FACTOR)), 230);

  private ConversationFixtures() {}

  static Path file(String profile) {
    return FOLDER.resolve(profile + ".txt");
  }

  public static void main(String[] unused) throws IOException {
    Files.createDirectories(FOLDER);
    InstrumentProfiles profiles = InstrumentProfiles.load(ShippedProfilesTest.FOLDER);
    for (SimulatedInstrument instrument : SimulatedInstrument.values()) {
      String profile = instrument.profile();
      Files.deleteIfExists(file(profile));
      try (SimulatedBench bench =
              SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
          ConversationFile file =
              ConversationFile.create(
                  file(profile), "the simulated bench, profile " + profile, Clock.system())) {
        CaptureWalk.Walked walked =
            CaptureWalk.walk(
                new InstrumentAccess(
                    ResourceName.parse(bench.resource(instrument)),
                    file,
                    Clock.system(),
                    new StopRequest()),
                profiles.named(profile),
                CONNECTED,
                step -> {});
        file.remark(walked.capture().time().length() + " samples");
      }
    }
  }
}

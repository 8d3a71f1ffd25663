package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.util.stream.Stream;
import mainsgap.link.RecordedConversation;
import mainsgap.signal.Capture;
import mainsgap.waiting.ManualClock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A whole capture by each profile that goes with the program, against a conversation recorded on
 * the simulated bench. A change of what a profile sends fails here with the line of the recording;
 * where it is meant, {@code main} of {@link ConversationFixtures} records again.
 */
class RecordedConversationsTest {
  /** EN 50160: the supply stays within 10 % of nominal. */
  private static final double RMS_VOLTS = 230;

  private static final double BAND_VOLTS = 23;

  private final InstrumentProfiles profiles = InstrumentProfiles.load(ShippedProfilesTest.FOLDER);

  static Stream<String> names() {
    return InstrumentProfiles.load(ShippedProfilesTest.FOLDER).all().stream()
        .map(InstrumentProfile::name);
  }

  @ParameterizedTest
  @MethodSource("names")
  void eachProfileSaysWhatWasRecordedAndReadsTheSupply(String profile) {
    assertTrue(
        Files.exists(ConversationFixtures.file(profile)),
        () -> "no recording for " + profile + ": run main of ConversationFixtures");
    RecordedConversation recorded = new RecordedConversation(ConversationFixtures.file(profile));
    Capture capture =
        CaptureWalk.walk(
                new InstrumentAccess(
                    recorded.resource(), recorded, new ManualClock(), new StopRequest()),
                profiles.named(profile),
                ConversationFixtures.CONNECTED,
                step -> {})
            .capture();
    recorded.assertFinished();
    double[] volts = capture.output().volts();
    assertEquals(0.2, capture.time().durationSeconds(), 0.05);
    assertEquals(RMS_VOLTS, rms(volts), BAND_VOLTS);
  }

  private static double rms(double[] volts) {
    double sum = 0;
    for (double v : volts) {
      sum += v * v;
    }
    return Math.sqrt(sum / volts.length);
  }
}

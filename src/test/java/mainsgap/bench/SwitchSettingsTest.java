package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import mainsgap.arming.ClosedBy;
import mainsgap.settings.SettingsException;
import mainsgap.signal.Event;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a rig file, a relay file and a plan say of the mains switch, right and wrong. */
class SwitchSettingsTest {
  private static final String SOURCE =
      """
      [mains-switch]
      kind = "scpi-output"
      resource = "TCPIP::192.0.2.30::5025::SOCKET"
      emergency-stop = "red button"
      """;
  private static final String RELAY =
      """
      [mains-switch]
      kind = "serial-relay"
      resource = "ASRL/dev/ttyUSB0,9600::INSTR"
      emergency-stop = "red button"
      relay = "relay.toml"
      """;

  private final Requests requests;

  SwitchSettingsTest(@TempDir Path folder) {
    requests = new Requests(folder);
  }

  @Test
  void examplesOfThePagesAreReadAsTheyStand() {
    List<String> ofRig = Pages.examplesOf("rig-file.md");
    List<String> ofRelay = Pages.examplesOf("serial-relay.md");
    List<String> ofPlan = Pages.examplesOf("series-plan.md");

    RigSwitch source = rigSwitch(ofRig.get(1));
    assertTrue(source.choosesAngle());
    assertEquals(ClosedBy.PROGRAM_ON_A_WORD, source.closedBy());
    for (String relayFile : ofRelay.subList(0, 2)) {
      Path unused = requests.write("my-relay.toml", relayFile);
      assertEquals(RigSwitch.Kind.SERIAL_RELAY, rigSwitch(ofRig.get(2)).kind());
    }
    Path electronic =
        requests.write(
            "my-relay.toml",
            ofRelay.get(1).replace("\"contactor\"", "\"turn-off-electronic\"") + ofRelay.get(2));
    assertNotNull(electronic);
    assertTrue(rigSwitch(ofRig.get(2)).choosesAngle());

    SeriesPlan plan = SeriesPlan.read(requests.write("plan.toml", ofPlan.get(0)));
    assertEquals(
        new SeriesPlan(
            24,
            Event.LOSS,
            5,
            Duration.ofSeconds(10),
            Duration.ofSeconds(30),
            Duration.ofSeconds(60),
            1,
            7,
            List.of()),
        plan);
    assertEquals(
        8, SeriesPlan.read(requests.write("plan.toml", ofPlan.get(1))).anglesDegrees().size());
  }

  @Test
  void handNeedsNoTable() {
    assertNull(RigFile.read(requests.rig(100), null, 230).mainsSwitch());
    Path byHand = requests.rigWith("[mains-switch]\nkind = \"by-hand\"\n");
    assertNull(RigFile.read(byHand, null, 230).mainsSwitch());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "kind = \"scpi-output\" | kind = \"plug\" | 'mains-switch.kind' is 'plug'; allowed: by-hand",
        "emergency-stop | emergancy-stop | 'mains-switch.emergancy-stop' is not a key that is known",
        "emergency-stop = \"red button\" | restores-by-itself = true | 'mains-switch.emergency-stop' is"
            + " missing",
        "resource = \"TCPIP::192.0.2.30::5025::SOCKET\" | resource = \"nonsense\" |"
            + " 'mains-switch.resource' cannot be used",
        "emergency-stop = \"red button\" | emergency-stop = \"x\"\\nrestores-by-itself = \"yes\" |"
            + " expected true or false",
        "emergency-stop = \"red button\" | emergency-stop = \"x\"\\nrelay = \"a.toml\" |"
            + " 'mains-switch.relay' belongs to kind = \"serial-relay\"",
        "emergency-stop = \"red button\" | emergency-stop = \"x\"\\nopen-at-angle = [\"OFF\"] |"
            + " {angle}",
        "kind = \"scpi-output\" | kind = \"by-hand\" | belongs to a commanded switch"
      })
  void wrongSwitchOfARigIsNamedWithItsLine(String found, String other, String words) {
    complainsOf(words, SOURCE.replace(found, other.replace("\\n", "\n")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "relay.toml | other.toml | no settings file 'other.toml'",
        "relay.toml | ../relay.toml | leads outside the folder",
        "relay.toml | /etc/relay.toml | leads outside the folder"
      })
  void relayFileIsThereAndInsideTheRigsFolder(String found, String other, String words) {
    Path unused = requests.write("relay.toml", Pages.examplesOf("serial-relay.md").get(0));
    complainsOf(words, RELAY.replace(found, other));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "name = | nmae = | 'nmae' is not a key",
        "contact = \"contactor\" | contact = \"mains\" | allowed: contactor, turn-off-electronic",
        "0x01, 0xA5] | 256] | 'on.bytes' is 256; allowed: 0 to 255",
        "bytes = [0x5A, 0x01, 0xA5] | bytes = [] | has 0 bytes",
        "reply-bytes = [0x06] | text = \"ON\" | stands beside 'text'",
        "off-bytes = [0x5A, 0x00, 0xA5] | off-bytes = [0x5A, 0x01] | cannot be told from",
        "reply-seconds = 1 | reply-seconds = 60 | 'reply-seconds' is 60; allowed: 0.01 to 10",
        "[state] | [off-at-angle]\\ntext = \"X\"\\n[state] | a contactor opens when it can"
      })
  void wrongRelayFileIsNamedWithItsLine(String found, String other, String words) {
    String example = Pages.examplesOf("serial-relay.md").get(0);
    int at = example.indexOf(found);
    String wrong =
        example.substring(0, at)
            + other.replace("\\n", "\n")
            + example.substring(at + found.length());
    Path unused = requests.write("relay.toml", wrong);
    complainsOf(words, RELAY);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[series]\\ntrials = 0 | 'series.trials' is 0; allowed: 1 to 10000",
        "[series]\\ntrials = \"many\" | expected a whole number",
        "[series]\\nevent = \"both\" | 'series.event' is 'both'; allowed: loss, restoration",
        "[waits]\\npause-seconds = -1 | 'waits.pause-seconds' is -1",
        "[switching]\\nangles-degrees = [0, 360] | allowed: 0 to 35",
        "[switching]\\nangles-degrees = [0, \"top\"] | expected a number",
        "[switching]\\nangles-degrees = [0]\\nrandom-delay-cycles = 1 | write one of the two",
        "restores-by-itself = true | 'restores-by-itself' is not a key",
        "nonsense | line 1: not TOML"
      })
  void wrongPlanIsNamedWithItsLine(String plan, String words) {
    Path file = requests.write("plan.toml", plan.replace("\\n", "\n"));
    complains(words, () -> SeriesPlan.read(file));
  }

  @Test
  void anglesAreRefusedWhereTheSwitchOpensWhenItCan() {
    Path unused = requests.write("relay.toml", Pages.examplesOf("serial-relay.md").get(0));
    SeriesPlan angles =
        new SeriesPlan(null, null, null, null, null, null, null, null, List.of(90.0));

    String ofRelay = refusal(RELAY, angles);
    String ofHand = refusal("", angles);

    assertTrue(ofRelay.contains("the angle is measured, not chosen"), ofRelay);
    assertTrue(ofHand.contains("a hand moves it"), ofHand);
  }

  @Test
  void whatIsAskedGoesBeforeThePlanAndThePlanBeforeTheRig() {
    SeriesPlan plan =
        new SeriesPlan(
            null,
            null,
            3,
            Duration.ofSeconds(7),
            Duration.ofSeconds(30),
            Duration.ofSeconds(90),
            2,
            11,
            List.of());
    SeriesRequest asked = requests.real("TCPIP::h::1::SOCKET", 1, CatchWish.AUTOMATIC, rig(SOURCE));

    SeriesSetup setup = SeriesSetup.of(requests.planned(Event.LOSS, plan, asked));

    assertEquals(Duration.ZERO, setup.pace().settle(), "asked for");
    assertEquals(Duration.ofSeconds(10), setup.pace().triggerWait(), "asked for");
    assertEquals(Duration.ofSeconds(30), setup.pace().pause(), "planned");
    assertEquals(2, setup.timing().randomCycles());
    assertEquals(11, setup.timing().seed());
  }

  private String refusal(String table, SeriesPlan plan) {
    SeriesRequest request =
        requests.planned(
            Event.LOSS,
            plan,
            requests.real("TCPIP::h::1::SOCKET", 1, CatchWish.AUTOMATIC, rig(table)));
    return String.valueOf(
        assertThrows(BenchException.class, () -> SeriesSetup.of(request)).getMessage());
  }

  private RigSwitch rigSwitch(String table) {
    RigSwitch found = RigFile.read(rig(table), null, 230).mainsSwitch();
    assertNotNull(found);
    return found;
  }

  private Path rig(String table) {
    return requests.rigWith(table);
  }

  private void complainsOf(String words, String table) {
    Path file = rig(table);
    complains(words, () -> RigFile.read(file, null, 230));
  }

  private static void complains(String words, Executable reading) {
    String complaint = String.valueOf(assertThrows(SettingsException.class, reading).getMessage());
    assertTrue(complaint.contains(words), complaint);
  }
}

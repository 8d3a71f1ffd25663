package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import mainsgap.bench.ProbedChannel.Category;
import mainsgap.bench.RigSheet.Kept;
import mainsgap.settings.SettingsException;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RigSheetTest {
  private static final ProbedChannel PROBE = new ProbedChannel(1, 100, Category.CAT_II, 600);
  private static final String LEAST =
      """
      [channels.output]
      number = 1
      probe-factor = 100
      category = "cat-ii"
      rated-volts = 600
      """;

  private final Path folder;

  RigSheetTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @Test
  void exampleOfThePageIsReadWhole() throws Exception {
    RigSheet sheet = RigSheet.read(write(Pages.examplesOf("rig-file.md").get(0)));

    assertEquals(
        new RigSheet.Instrument(
            "TCPIP::192.0.2.20::5025::SOCKET", null, null, "ten-field-preamble"),
        sheet.instrument());
    assertEquals(new RigSheet.Unit("Lumengrove 600", "LG-0001", "2.1"), sheet.unit());
    assertEquals(
        new DeclaredClaim(
            "< 20 ms",
            20,
            true,
            DeclaredClaim.Kind.MAXIMUM,
            "unknown",
            "label on the box",
            "2026-11-02"),
        sheet.claim());
    assertEquals(new RigSheet.Supply(230.0, 50.0, 230.0, 10.0, 300.0), sheet.supply());
    assertEquals(new RigSheet.Wish(10, Event.LOSS, CatchWish.AUTOMATIC), sheet.wish());
    assertEquals("by hand", sheet.kept().switchWords());
  }

  static Stream<RigSheet> sheets() {
    return Stream.of(
        least(),
        new RigSheet(
            new RigSheet.Instrument(null, "standby", 7, null),
            new RigSheet.Unit("a \"quoted\" \\ unit, µ", "S-1", null),
            DeclaredClaim.ofMillis(0.5, "0.5 ms"),
            new RigSheet.Supply(120.5, 60.0, 120.0, 0.25, 1e-3),
            Map.of(
                ChannelRole.OUTPUT, PROBE,
                ChannelRole.MAINS, new ProbedChannel(2, 0.1, Category.CAT_IV, 1000),
                ChannelRole.SECOND_LEG, new ProbedChannel(3, 200, Category.CAT_III, 300)),
            new ClampedChannel(4, 10, 2.5),
            new RigSheet.Wish(10_000, Event.RESTORATION, CatchWish.BACK_TO_BACK_RECORDS),
            "60 W",
            Map.of("state of charge", "80 %", "room", "21 degrees"),
            Kept.NONE));
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void whatIsWrittenIsReadAgain(RigSheet sheet) {
    Path file = folder.resolve("rig.toml");

    sheet.write(file);

    assertEquals(sheet, RigSheet.read(file));
  }

  @Test
  void exampleOfThePageSurvivesTheRoundTrip() throws Exception {
    RigSheet sheet = RigSheet.read(write(Pages.examplesOf("rig-file.md").get(0)));
    Path copy = folder.resolve("copy.toml");

    sheet.write(copy);

    assertEquals(sheet, RigSheet.read(copy));
  }

  @Test
  void tablesThatAreNotEditedStayWordForWord() throws Exception {
    String kept =
        """
        # behind the bench
        [mains-switch]
        kind = "scpi-output"   # rated 16 A
        resource = "TCPIP::192.0.2.30::5025::SOCKET"
        # tried on Monday
        emergency-stop = "red button"
        open-at-angle = [
          ":OUTP:OFF:ANGL {angle}",
        ]
        """;
    String external =
        """
        [external-input]
        follows = "unit"
        low-volts = 0
        high-volts = 12.50
        high-means = "backup"
        """;
    Path file = write(LEAST + "\n" + kept + "\n" + external);

    RigSheet sheet = RigSheet.read(file);
    sheet.write(file);

    String written = Files.readString(file);
    assertTrue(written.contains(kept), written);
    assertTrue(written.contains(external), written);
    assertEquals(sheet, RigSheet.read(file));
    assertEquals(
        "output of the AC source at TCPIP::192.0.2.30::5025::SOCKET, emergency stop: red button",
        sheet.kept().switchWords());
    assertNotNull(RigFile.read(file, null, 230).mainsSwitch());
  }

  @Test
  void channelsOfTheLastExampleOfThePageAreRead() throws Exception {
    RigSheet sheet = RigSheet.read(write(LEAST + Pages.examplesOf("rig-file.md").get(3)));

    assertEquals(
        new ProbedChannel(3, 100, Category.CAT_II, 600),
        sheet.channels().get(ChannelRole.SECOND_LEG));
    assertEquals(new ClampedChannel(4, 10, 5), sheet.loadCurrent());
  }

  @Test
  void tableWrittenInOneLineKeepsItsValues() throws Exception {
    Path file =
        write(
            """
            mains-switch = { kind = "scpi-output", resource = "TCPIP::192.0.2.30::5025::SOCKET", \
            emergency-stop = "red button" }
            """
                + LEAST);

    RigSheet.read(file).write(file);

    RigSwitch commanded = RigFile.read(file, null, 230).mainsSwitch();
    assertNotNull(commanded);
    assertEquals("red button", commanded.emergencyStop());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[instrument]\\nsimulated = 'ours' | line 2: 'instrument.simulated' is 'ours'; allowed: standby,",
        "[instrument]\\nseed = 1 | 'instrument.seed' belongs to 'simulated'",
        "[instrument]\\nresource = 'x' | line 2: 'instrument.resource' cannot be used",
        "[claim]\\nmillis = -1 | 'claim.millis' is -1; allowed: 0 to",
        "[claim]\\nmillis = 1\\nrelation = '>' | line 3: 'claim.relation' is '>'; allowed: <, <=",
        "[claim]\\nmillis = 1\\ndate = 'soon' | 'claim.date' is 'soon'; allowed: a date such as",
        "[claim]\\nprinted = 'fast' | 'claim.millis' is missing",
        "[series]\\ntrials = 0 | 'series.trials' is 0; allowed: 1 to 10000",
        "[series]\\ncatch = 'net' | 'series.catch' is 'net'; allowed: automatic, time-out,",
      })
  void wrongEntryIsNamedWithItsPlace(String table, String complaint) throws Exception {
    Path file = write(table.replace("\\n", "\n") + "\n" + LEAST);

    String message =
        String.valueOf(
            assertThrows(SettingsException.class, () -> RigSheet.read(file)).getMessage());

    assertTrue(message.contains(complaint), message);
  }

  @Test
  void bareClaimIsMadeOfItsNumber() throws Exception {
    RigSheet sheet = RigSheet.read(write("[claim]\nmillis = 12.5\n" + LEAST));

    assertEquals(
        new DeclaredClaim(
            "<= 12.5 ms",
            12.5,
            false,
            DeclaredClaim.Kind.UNSTATED,
            "unknown",
            "unknown",
            "unknown"),
        sheet.claim());
  }

  @Test
  void twoRolesOnOneChannelAreRefusedWhereARunIsAskedFor() throws Exception {
    Path file =
        write(
            LEAST
                + "[channels.load-current]\nnumber = 1\namperes-per-volt = 10\npeak-amperes = 5\n");

    String message =
        String.valueOf(
            assertThrows(SettingsException.class, () -> RigFile.read(file, null, 230))
                .getMessage());

    assertTrue(
        message.endsWith(
            "'channels.load-current.number' is 1, which is the output's: connect load current to"
                + " another"),
        message);
  }

  @Test
  void placeThatCannotBeWrittenIsToldAndTheOldFileStays() throws Exception {
    Path inTheWay = write("a file");

    String message =
        String.valueOf(
            assertThrows(BenchException.class, () -> least().write(inTheWay.resolve("rig.toml")))
                .getMessage());

    assertTrue(message.contains("cannot be written"), message);
    assertEquals("a file", Files.readString(inTheWay));
  }

  @Test
  void linkStaysALink() throws Exception {
    Path goal = write(LEAST);
    Path link = folder.resolve("link.toml");
    assumeTrue(canLink(link, goal), "this file system has no symbolic links");

    least().write(link);

    assertTrue(Files.isSymbolicLink(link));
    assertEquals(least(), RigSheet.read(goal));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(link, goal), files.sorted().toList());
    }
  }

  private static boolean canLink(Path link, Path goal) {
    try {
      return Files.createSymbolicLink(link, goal).equals(link);
    } catch (java.io.IOException | UnsupportedOperationException e) {
      return false;
    }
  }

  private static RigSheet least() {
    return new RigSheet(
        new RigSheet.Instrument(null, null, null, null),
        new RigSheet.Unit(null, null, null),
        null,
        new RigSheet.Supply(null, null, null, null, null),
        Map.of(ChannelRole.OUTPUT, PROBE),
        null,
        new RigSheet.Wish(null, null, null),
        null,
        Map.of(),
        Kept.NONE);
  }

  private Path write(String text) throws Exception {
    return Files.writeString(folder.resolve("rig.toml"), text);
  }
}

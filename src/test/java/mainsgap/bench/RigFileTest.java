package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import mainsgap.bench.ProbedChannel.Category;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.EventSignal;
import mainsgap.scope.EventSignal.Follows;
import mainsgap.settings.SettingsException;
import mainsgap.signal.ChannelRole;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigFileTest {

  @Test
  void signalsOfThePageAboutCatchingAreRead(@TempDir Path folder) throws Exception {
    Path file =
        Files.writeString(folder.resolve("rig.toml"), example("rig-file") + example("catching"));

    RigSignals signals = RigFile.read(file, null, 230).signals();

    assertEquals(Input.ofSupply(3, 1), signals.markerInput());
    assertEquals(new EventSignal(Follows.MAINS, 0, 5, true, 0.04), signals.marker());
    assertEquals(new EventSignal(Follows.UNIT, 0, 12, false, 0.01), signals.external());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-volts = 5 | high-volts = 0 | channels.marker.high-volts' is 0, not above low-volts",
        "high-volts = 5 | high-volts = 230 | channels.marker.high-volts' is 230; allowed: -50 to 50",
        "follows = \"mains\" | follows = \"me\" | channels.marker.follows' is 'me'; allowed: mains, unit",
        "number = 3 | number = 2 | channels.marker.number' is 2, which is another's"
      })
  void wrongSignalIsNamed(String good, String bad, String complaint, @TempDir Path folder)
      throws Exception {
    String text = example("rig-file") + example("catching");
    int at = text.lastIndexOf("[channels.marker]");
    String wrong = text.substring(0, at) + text.substring(at).replaceFirst(good, bad);
    Path file = Files.writeString(folder.resolve("rig.toml"), wrong);

    String message =
        String.valueOf(
            assertThrows(SettingsException.class, () -> RigFile.read(file, null, 230))
                .getMessage());

    assertTrue(message.contains(complaint), message);
  }

  private static String example(String name) throws IOException {
    String page = Files.readString(Path.of("src", "docs", name + ".md"));
    int from = page.indexOf("```toml") + 7;
    return page.substring(from, page.indexOf("```", from));
  }

  @Test
  void exampleOfThePageIsReadAsItStands(@TempDir Path folder) throws Exception {
    String example = Pages.examplesOf("rig-file.md").get(0);
    Path file = Files.writeString(folder.resolve("rig.toml"), example);

    RigFile rig = RigFile.read(file, null, 230);

    assertEquals(
        Map.of(
            ChannelRole.OUTPUT, new ProbedChannel(1, 100, Category.CAT_II, 600),
            ChannelRole.MAINS, new ProbedChannel(2, 100, Category.CAT_III, 600)),
        rig.channels());
    assertEquals("ten-field-preamble", rig.profile());
    assertEquals("Lumengrove 600", rig.unit());
    assertEquals(230, rig.nominalVolts());
    assertEquals(50, rig.frequencyHertz());
    assertEquals(10, rig.settleSeconds());
    assertEquals(300, rig.longestCheckSeconds());
    assertEquals(RigSignals.NONE, rig.signals());
    assertEquals(
        List.of("serial", "firmware", "load", "battery", "room"),
        List.copyOf(rig.conditions().keySet()));
  }
}

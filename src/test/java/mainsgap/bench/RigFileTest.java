package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import mainsgap.bench.ProbedChannel.Category;
import mainsgap.signal.ChannelRole;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigFileTest {

  @Test
  void exampleOfThePageIsReadAsItStands(@TempDir Path folder) throws Exception {
    String page = Files.readString(Path.of("src", "docs", "rig-file.md"));
    String example = page.substring(page.indexOf("```toml") + 7, page.lastIndexOf("```"));
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
    assertEquals(
        List.of("serial", "firmware", "load", "battery", "room"),
        List.copyOf(rig.conditions().keySet()));
  }
}

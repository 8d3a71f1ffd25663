package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import mainsgap.bench.SeriesEnd.Kind;
import mainsgap.scope.InstrumentProfile;
import mainsgap.scope.InstrumentProfiles;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WrongUseTest {
  private static final InstrumentChoice UNREACHED =
      new InstrumentChoice.Real("TCPIP::127.0.0.1::9::SOCKET");

  private final Path folder;
  private final Requests requests;

  WrongUseTest(@TempDir Path folder) {
    this.folder = folder;
    this.requests = new Requests(folder);
  }

  @Test
  void realInstrumentNeedsTheCautionsRead() {
    assertWrongUse(
        "nothing is armed on a real instrument before the cautions are read: read them, then say so"
            + " with --cautions-read",
        run(UNREACHED, false, requests.rig(100)));
  }

  @Test
  void realInstrumentNeedsARig() {
    assertWrongUse(
        "a real instrument needs a rig file with channels, probe factors and probe ratings: write"
            + " one and name it with --rig FILE",
        run(UNREACHED, true, null));
  }

  @Test
  void unknownSimulatedUnitIsNamed() {
    SeriesEnd end = run(new InstrumentChoice.Simulated("perpetual", 1), false, null);

    assertEquals(Kind.WRONG_USE, end.kind());
    assertTrue(end.sentence().contains("perpetual"), end.sentence());
    assertTrue(end.sentence().contains("never-returns"), end.sentence());
  }

  @Test
  void resourceNameThatIsNoneIsRefused() {
    SeriesEnd end = run(new InstrumentChoice.Real("the big one"), true, requests.rig(100));

    assertEquals(Kind.WRONG_USE, end.kind());
    assertTrue(end.sentence().contains("the big one"), end.sentence());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rated-volts = 600 | rated-volts = 150 | line 14: 'channels.output.rated-volts' is 150 V, below"
            + " the 230 V that the line has to earth: use a probe that is rated for it",
        "category = \"cat-iii\" | category = \"cat-i\" | line 13: 'channels.output.category' is"
            + " 'cat-i'; allowed: cat-ii, cat-iii, cat-iv",
        "probe-factor = 100 | probe-ratio = 100 | line 12: 'channels.output.probe-ratio' is not a key"
            + " that is known here; allowed: number, probe-factor, category, rated-volts",
        "[channels.output] | [channels.out] | line 10: 'channels.out' is not a key that is known here;"
            + " allowed: output, mains, second-leg, load-current, marker",
        "number = 2 | number = 1 | line 17: 'channels.mains.number' is 1, which is the output's:"
            + " connect mains to another",
        "nominal-volts = 230 | line-to-earth-volts = 100 | line 6: 'supply.line-to-earth-volts' is"
            + " 100 V, but of two conductors with 230 V between them one has at least half of it to"
            + " earth: write the larger one's",
        "nominal-volts = 230 | nominal-volts = \"230 V\" | line 6: 'supply.nominal-volts' is the"
            + " text \"230 V\", expected a number",
      })
  void mistakeInTheRigFileIsNamedWithLineAndKey(String right, String wrong, String complaint)
      throws Exception {
    Path rig = requests.rig(100);
    Files.writeString(rig, Files.readString(rig).replaceFirst(Pattern.quote(right), wrong));

    SeriesEnd end = run(UNREACHED, true, rig);

    assertWrongUse(rig + " " + complaint, end);
  }

  @Test
  void profileThatIsNotThereIsWrongUse() {
    assertWrongUse(
        "there is no instrument profile 'none-such'; there are: "
            + InstrumentProfiles.load(ProfileFolder.find()).all().stream()
                .map(InstrumentProfile::name)
                .collect(Collectors.joining(", ")),
        run(UNREACHED, true, requests.rigFor("none-such", 100)));
  }

  @Test
  void sessionThatIsAFolderOrBelowAFileFails() throws Exception {
    Files.createDirectory(requests.file());
    SeriesEnd onFolder =
        Series.of(requests.simulated("standby", 1, CatchWish.AUTOMATIC))
            .run(new Heard(), new StopRequest());
    assertEquals(Kind.SESSION_FAILED, onFolder.kind());

    Path below = Files.writeString(folder.resolve("a-file"), "text");
    SeriesEnd belowFile =
        Series.of(new Requests(below).simulated("standby", 1, CatchWish.AUTOMATIC))
            .run(new Heard(), new StopRequest());
    assertEquals(Kind.SESSION_FAILED, belowFile.kind());
    assertFalse(belowFile.sentence().isBlank());
  }

  @Test
  void cautionsCoverTheUsualDangers() {
    String all = String.join(" ", Cautions.list());
    for (String danger :
        new String[] {"120/230 V", "local codes", "battery", "earth", "CAT", "neutral", "RCD"}) {
      assertTrue(all.contains(danger), danger);
    }
  }

  private SeriesEnd run(InstrumentChoice instrument, boolean cautionsRead, @Nullable Path rig) {
    return Series.of(requests.request(instrument, 1, CatchWish.AUTOMATIC, cautionsRead, rig))
        .run(new Heard(), new StopRequest());
  }

  private void assertWrongUse(String sentence, SeriesEnd end) {
    assertEquals(sentence, end.sentence());
    assertEquals(Kind.WRONG_USE, end.kind());
    assertNull(end.session());
    assertFalse(Files.exists(requests.file()));
  }
}

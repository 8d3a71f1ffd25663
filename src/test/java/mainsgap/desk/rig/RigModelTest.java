package mainsgap.desk.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import mainsgap.bench.Cautions;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.RigCheckEnd;
import mainsgap.bench.RigSheet;
import mainsgap.bench.SeriesRequest;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.rig.PartState.Level;
import mainsgap.transfer.claim.DeclaredClaim;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigModelTest {
  private final Path folder;
  private final RigModel model;

  RigModelTest(@TempDir Path folder) {
    this.folder = folder;
    model = opened();
  }

  private RigModel opened() {
    return new RigModel(DeskToolsForTests.atOnce(folder));
  }

  @Test
  void aNewcomerNeedsOnlyToReadTheCautions() {
    assertEquals("read the cautions and tick each: none of the 12 is ticked", whyNotReady(model));
    readCautions(model);
    assertEquals("", whyNotReady(model));
    SeriesRequest request = model.source().request();
    assertEquals(new InstrumentChoice.Simulated("standby", 7), request.instrument());
    assertEquals(10, request.trials());
    assertTrue(request.cautionsRead());
    DeclaredClaim claim = request.claim();
    assertNotNull(claim);
    assertEquals("< 20 ms", claim.asPrinted());
    assertEquals(model.fields().sheet(), RigSheet.read(Objects.requireNonNull(request.rigFile())));
  }

  @Test
  void noSeriesIsGivenBeforeTheCautionsAreRead() {
    model.cautions().list().get(0).read().set(true);
    String why =
        assertThrows(IllegalStateException.class, () -> model.source().request()).getMessage();
    assertEquals("read the cautions and tick each: 1 of 12 is ticked", why);
  }

  @Test
  void whatWasReadForTheSimulatedBenchDoesNotHoldForARealRig() {
    readCautions(model);
    goReal("TCPIP::192.0.2.20::5025::SOCKET");
    model.fields().unit.name.type("Invented Lumengrove 600");
    assertEquals("read the cautions and tick each: none of the 12 is ticked", whyNotReady(model));
    readCautions(model);
    assertEquals("", whyNotReady(model));
    assertEquals(
        new InstrumentChoice.Real("TCPIP::192.0.2.20::5025::SOCKET"),
        model.source().request().instrument());
  }

  @Test
  void aRigWhoseSwitchIsCommandedHasMoreCautions() throws IOException {
    model.shelf().open(commandedRig());
    assertEquals(Cautions.of(true).size(), model.cautions().list().size());
    assertEquals("moved by the program", model.stateOf(Part.SWITCH).get().words().get(0));
  }

  @Test
  void whatWasInventedForTheExampleIsNoClaimOfARealUnit() {
    goReal("TCPIP::192.0.2.20::5025::SOCKET");
    assertNull(model.fields().sheet().claim());
    assertEquals("", model.fields().unit.name.text());
    assertEquals("", model.fields().load.description.text());
    assertEquals(
        "Unit under test: the unit has no name: write what tells this specimen from others",
        whyNotReady(model));
  }

  @Test
  void aBadFieldIsSaidBesideItAndHoldsUpTheSeries() {
    readCautions(model);
    model.fields().wall.nominalVolts.type("many");
    String sentence = "the nominal voltage is 'many', which is no number; allowed: 1 to 1000 V";
    assertEquals(sentence, model.fields().wall.nominalVolts.complaint());
    assertEquals("Wall: " + sentence, whyNotReady(model));
    assertEquals(Level.WRONG, model.stateOf(Part.WALL).get().level());
    model.fields().wall.nominalVolts.type("120,5");
    assertEquals("", whyNotReady(model));
    assertEquals(120.5, model.fields().sheet().supply().nominalVolts());
  }

  @Test
  void aProbeThatDoesNotStandTheLineIsADangerInPlace() {
    readCautions(model);
    model.fields().clip(Part.OUTPUT_CLIP).ratedVolts.type("150");
    assertEquals(
        "230 V to earth: CAT III 150 V probe does NOT stand it",
        model.stateOf(Part.OUTPUT_CLIP).get().danger().words());
    assertEquals(Level.WRONG, model.stateOf(Part.OUTPUT_CLIP).get().level());
    assertTrue(whyNotReady(model).startsWith("At the output: the rating to earth is 150 V"));
    assertEquals(
        "230 V to earth: CAT III 600 V probe stands it",
        model.stateOf(Part.MAINS_CLIP).get().danger().words());
  }

  @Test
  void twoClipsOnOneChannelAreNamed() {
    readCautions(model);
    model.fields().clip(Part.OUTPUT_CLIP).number.type("2");
    assertEquals(
        "At the output: channel 2 is the mains's: connect the output to another",
        whyNotReady(model));
  }

  @Test
  void aRightRigIsSeenAliveAtItsParts() {
    model.check();
    RigCheckEnd end = model.checking().endProperty().get();
    assertNotNull(end);
    assertEquals(RigCheckEnd.Kind.RIGHT, end.kind(), end.sentence());
    assertEquals(Level.RIGHT, model.stateOf(Part.OUTPUT_CLIP).get().level());
    String live = model.stateOf(Part.MAINS_CLIP).get().live();
    assertTrue(live.matches("2[23]\\d\\.\\d V RMS, (49|50)\\.\\d\\d Hz"), live);
    assertEquals("mains is on", model.stateOf(Part.SWITCH).get().live());
    CheckStory story = CheckStory.of(model);
    assertEquals(CheckStory.Look.RIGHT, story.look());
    assertEquals("the rig is right: a series can begin", story.headline());
  }

  @Test
  void aWrongProbeFactorIsFoundAndSaidWithWhatToChange() {
    model.fields().clip(Part.OUTPUT_CLIP).probeFactor.type("200");
    model.check();
    CheckStory story = CheckStory.of(model);
    assertEquals(CheckStory.Look.WRONG, story.look());
    assertTrue(story.headline().contains("probe factor"), story.headline());
    assertEquals(Level.WRONG, model.stateOf(Part.OUTPUT_CLIP).get().level());
    assertEquals(Level.RIGHT, model.stateOf(Part.MAINS_CLIP).get().level());
  }

  @Test
  void aScopeThatDoesNotAnswerIsASentence() {
    goReal("TCPIP::127.0.0.1::1::SOCKET");
    model.fields().unit.name.type("Invented Lumengrove 600");
    readCautions(model);
    model.check();
    CheckStory story = CheckStory.of(model);
    assertEquals(CheckStory.Look.WRONG, story.look());
    assertTrue(
        story.headline().startsWith("the scope could not be reached or failed: "),
        story.headline());
  }

  @Test
  void whatWasSeenIsNoMoreShownOnceTheRigIsChanged() {
    model.check();
    model.fields().clip(Part.OUTPUT_CLIP).probeFactor.type("50");
    assertEquals("", model.stateOf(Part.OUTPUT_CLIP).get().live());
    readCautions(model);
    assertEquals(
        "the rig was changed since it was checked: check it again",
        CheckStory.of(model).headline());
  }

  @Test
  void nothingCanBeCheckedWhileASeriesRuns() {
    model.seriesRuns(true);
    model.check();
    assertNull(model.checking().endProperty().get());
    assertFalse(model.whyNoCheckProperty().get().isEmpty());
    model.seriesRuns(false);
    assertEquals("", model.whyNoCheckProperty().get());
  }

  private void goReal(String resource) {
    model.fields().scope.runs.type(ScopeFields.Runs.INSTRUMENT.word());
    model.fields().scope.resource.type(resource);
  }

  private Path commandedRig() throws IOException {
    Path file = folder.resolve("commanded.toml");
    return Files.writeString(
        file,
        """
        [instrument]
        simulated = "standby"

        [channels.output]
        number = 1
        probe-factor = 100
        category = "cat-iii"
        rated-volts = 600

        [mains-switch]
        kind = "scpi-output"
        resource = "TCPIP::192.0.2.30::5025::SOCKET"
        emergency-stop = "red button at the front of the bench"
        """);
  }

  static void readCautions(RigModel model) {
    model.cautions().list().forEach(caution -> caution.read().set(true));
  }

  static String whyNotReady(RigModel model) {
    return model.source().whyNotReady().get();
  }
}

package mainsgap.desk.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import mainsgap.bench.RigSheet;
import mainsgap.desk.DeskToolsForTests;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rigs are files, and are found as they were left. */
class RigsRememberedTest {
  private static final String FULL =
      """
      [instrument]
      resource = "TCPIP::192.0.2.20::5025::SOCKET"
      profile = "ten-field-preamble"

      [unit]
      name = "Lumengrove 600"
      serial = "LG-0001"
      firmware = "2.1"

      [claim]
      printed = "under 20 ms"
      millis = 20
      relation = "<"
      kind = "typical"
      definition = "from loss to 90 %"
      source = "label on the box"
      date = "2026-11-02"

      [supply]
      nominal-volts = 120
      frequency-hertz = 60
      line-to-earth-volts = 130
      settle-seconds = 12.5
      longest-check-seconds = 200

      [series]
      trials = 7
      event = "restoration"
      catch = "record"

      [channels.output]
      number = 1
      probe-factor = 100
      category = "cat-ii"
      rated-volts = 600

      [channels.mains]
      number = 2
      probe-factor = 50.5
      category = "cat-iii"
      rated-volts = 1000

      [channels.second-leg]
      number = 3
      probe-factor = 100
      category = "cat-iv"
      rated-volts = 300

      [channels.load-current]
      number = 4
      amperes-per-volt = 10
      peak-amperes = 5

      [mains-switch]
      kind = "serial-relay"
      resource = "ASRL/dev/ttyUSB0,9600::INSTR"
      emergency-stop = "red button at the front of the bench"
      relay = "my-relay.toml" # lies beside this file

      [load]
      description = "60 W, resistive"

      [conditions]
      battery = "full"
      room = "21 degrees"
      """;

  private final Path folder;

  RigsRememberedTest(@TempDir Path folder) {
    this.folder = folder;
  }

  private RigModel opened() {
    return new RigModel(DeskToolsForTests.atOnce(folder));
  }

  private Path written(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void allThatARigFileSaysIsShownAndWrittenAgain() throws IOException {
    Path file = written("full.toml", FULL);
    RigModel model = opened();
    model.shelf().open(file);
    assertEquals(RigSheet.read(file), model.fields().sheet());
    Path copy = folder.resolve("copy.toml");
    assertTrue(model.saveAs(copy));
    assertEquals(withoutKept(RigSheet.read(file)), withoutKept(RigSheet.read(copy)));
    assertTrue(Files.readString(copy).contains("# lies beside this file"));
  }

  /** What is kept word for word may gain or lose an empty line. */
  private static RigSheet withoutKept(RigSheet sheet) {
    return new RigSheet(
        sheet.instrument(),
        sheet.unit(),
        sheet.claim(),
        sheet.supply(),
        sheet.channels(),
        sheet.loadCurrent(),
        sheet.wish(),
        sheet.load(),
        sheet.conditions(),
        RigSheet.Kept.NONE);
  }

  @Test
  void theLastRigIsOpenAgainAndTheOnesBeforeAreListed() throws IOException {
    Path first = written("first.toml", FULL);
    Path second = written("second.toml", FULL.replace("Lumengrove 600", "Fennwick 900"));
    RigModel model = opened();
    model.shelf().open(first);
    model.shelf().open(second);
    RigModel next = opened();
    assertEquals(second, next.shelf().fileProperty().get());
    assertEquals("Fennwick 900", next.fields().unit.name.text());
    assertFalse(next.shelf().unsavedProperty().get());
    assertEquals(List.of(second, first), next.shelf().recent());
  }

  @Test
  void whatIsNotSavedSurvivesTheProgramEvenWhereItIsBad() throws IOException {
    Path file = written("full.toml", FULL);
    RigModel model = opened();
    model.shelf().open(file);
    model.fields().wall.nominalVolts.type("many");
    model.fields().load.add("mood", "good");
    RigModel next = opened();
    assertEquals(file, next.shelf().fileProperty().get());
    assertTrue(next.shelf().unsavedProperty().get());
    assertEquals("many", next.fields().wall.nominalVolts.text());
    assertEquals(
        Map.of("battery", "full", "room", "21 degrees", "mood", "good"),
        next.fields().load.named());
    assertEquals(RigSheet.read(file).kept(), next.fields().kept());
  }

  @Test
  void onceSavedNothingIsUnsavedTheNextTime() {
    RigModel model = opened();
    model.fields().unit.name.type("Fennwick 900");
    assertTrue(model.shelf().unsavedProperty().get());
    assertTrue(model.saveAs(folder.resolve("my-rig.toml")));
    RigModel next = opened();
    assertFalse(next.shelf().unsavedProperty().get());
    assertEquals("Fennwick 900", next.fields().unit.name.text());
  }

  @Test
  void aRigThatCannotBeReadIsASentenceAndTheOneBeforeStays() throws IOException {
    RigModel model = opened();
    Path file = written("bad.toml", "[channels.output]\nnumber = 99\n");
    model.shelf().open(file);
    assertTrue(model.shelf().failedProperty().get());
    assertEquals(
        "the rig cannot be read: "
            + file
            + " line 2: 'channels.output.number' is 99; allowed: 1 to 16; the rig before it is still"
            + " here",
        model.shelf().wordsProperty().get());
    assertEquals("Lumengrove 600 (invented)", model.fields().unit.name.text());
  }

  @Test
  void aRigThatIsGoneAtTheStartIsASentenceOverTheExample() throws IOException {
    Path file = written("full.toml", FULL);
    opened().shelf().open(file);
    Files.delete(file);
    RigModel next = opened();
    assertNull(next.shelf().fileProperty().get());
    assertTrue(
        next.shelf().wordsProperty().get().endsWith("; the example stands here instead"),
        next.shelf().wordsProperty().get());
  }

  @Test
  void unsavedChangesAreAskedAboutBeforeAnotherRigIsOpened() throws IOException {
    Path file = written("full.toml", FULL);
    RigModel model = opened();
    model.fields().unit.name.type("Fennwick 900");
    model.shelf().open(file);
    assertFalse(model.shelf().questionProperty().get().isEmpty());
    assertEquals("Fennwick 900", model.fields().unit.name.text());
    model.shelf().answer(false);
    assertEquals("Fennwick 900", model.fields().unit.name.text());
    model.shelf().open(file);
    model.shelf().answer(true);
    assertEquals("Lumengrove 600", model.fields().unit.name.text());
  }

  @Test
  void aRigFileIsNotWrittenWhileItCouldNotBeReadAgain() {
    RigModel model = opened();
    model.fields().mainsSwitch.trials.type("0");
    Path file = folder.resolve("my-rig.toml");
    assertFalse(model.saveAs(file));
    assertFalse(Files.exists(file));
    assertEquals(
        "not saved, as a rig file cannot hold it: Mains switch: the number of trials is '0';"
            + " allowed: a whole number from 1 to 10000",
        model.shelf().wordsProperty().get());
  }

  @Test
  void aRigWhoseSwitchNamesAnotherFileRunsFromItsOwnFolder() throws IOException {
    Path file = written("full.toml", FULL);
    RigModel model = opened();
    model.shelf().open(file);
    RigModelTest.readCautions(model);
    assertEquals("", RigModelTest.whyNotReady(model));
    assertEquals(file, model.source().request().rigFile());
    model.fields().unit.name.type("Fennwick 900");
    assertEquals(
        "save the rig first: its mains switch names a file that lies beside the rig file",
        RigModelTest.whyNotReady(model));
  }

  @Test
  void aHandCanTakeOverASwitchThatWasCommanded() throws IOException {
    RigModel model = opened();
    model.shelf().open(written("full.toml", FULL));
    model.fields().moveByHand();
    assertEquals("moved by hand", model.stateOf(Part.SWITCH).get().words().get(0));
    assertEquals(12, model.cautions().list().size());
    assertEquals("", model.fields().sheet().kept().mainsSwitch());
  }

  @Test
  void aFolderThatCannotBeWrittenHoldsUpTheSeriesInASentence() throws IOException {
    RigModel model = opened();
    RigModelTest.readCautions(model);
    Files.createDirectory(folder.resolve("rig-draft.properties.new"));
    model.fields().unit.name.type("Fennwick 900");
    assertTrue(
        RigModelTest.whyNotReady(model).startsWith("the unsaved rig cannot be kept in "),
        RigModelTest.whyNotReady(model));
  }
}

package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import mainsgap.desk.DeskToolsForTests;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All on the calling thread, on sessions of the simulated bench. */
class TraceChoiceTest {
  private final SimulatedSessions made;
  private final FindingsModel model;

  TraceChoiceTest(@TempDir Path folder) {
    made = new SimulatedSessions(folder);
    model = new FindingsModel(DeskToolsForTests.atOnce(folder), folder);
    model.easel().resize(1000, 600, 1);
    model.wish(FigureWishes.USUAL.of(FigureKind.TRACES));
  }

  private Set<TrialKey> chosen() {
    return model.traces().chosenProperty().get();
  }

  private TrialRow longest(Path file) {
    return model.rows().stream()
        .filter(row -> row.key().file().equals(file))
        .reduce((a, b) -> b.millis() > a.millis() ? b : a)
        .orElseThrow();
  }

  @Test
  void oneSessionShowsAllItsTracesAndManyTheLongestOfEach() {
    Path first = made.usual("Invented Lumengrove 600");
    model.open(first);
    assertEquals(3, chosen().size());
    assertEquals(TracePick.LONGEST_OF_ALL, model.traces().pickProperty().get());
    assertNotNull(model.easel().pictureProperty().get());

    Path second = made.usual("Invented Lumengrove 700");
    model.open(second);
    assertEquals(Set.of(longest(first).key(), longest(second).key()), chosen());
  }

  @Test
  void tickingKeepsWhatWasChosenAndLastsWhenMoreIsOpened() {
    Path first = made.usual("Invented Lumengrove 600");
    model.open(first);
    TrialKey dropped = new TrialKey(first, 2);

    model.traces().tick(dropped, false);

    assertEquals(Set.of(new TrialKey(first, 1), new TrialKey(first, 3)), chosen());
    assertEquals(TracePick.TICKED, model.traces().pickProperty().get());
    model.open(made.usual("Invented Lumengrove 700"));
    assertEquals(2, chosen().size());

    model.remove(first);
    assertEquals(Set.of(), chosen());
    assertNull(model.easel().pictureProperty().get());
    assertEquals(
        "No trace is chosen: tick trials in the table, or press space on them there.",
        model.easel().whyNoneProperty().get());
  }

  @Test
  void trialThatWasSetAsideIsNotPickedButMayBeTicked() {
    Path file = made.usual("Invented Lumengrove 600");
    made.setAside(file, 1, "the lead slipped");
    model.open(file);
    assertEquals(2, chosen().size());

    model.traces().tick(new TrialKey(file, 1), true);

    assertEquals(3, chosen().size());
    assertNotNull(model.easel().pictureProperty().get());
  }

  @Test
  void moreTracesThanCanBeToldApartAreRefusedInWords() {
    Path file = made.series("standby", "Invented Lumengrove 600", 17, null);
    model.open(file);
    assertEquals(TraceChoice.MOST, chosen().size());
    assertNotNull(model.easel().pictureProperty().get());

    model.rows().forEach(row -> model.traces().tick(row.key(), true));

    assertEquals(
        "17 traces cannot be told apart: tick at most 16 in the table.",
        model.easel().whyNoneProperty().get());
  }

  @Test
  void fileThatWasTakenAwayIsSaidWhereItsCapturesAreNeeded() throws Exception {
    Path file = made.usual("Invented Lumengrove 600");
    model.wish(FigureWishes.USUAL);
    model.open(file);
    Files.delete(file);

    model.wish(FigureWishes.USUAL.of(FigureKind.TRACES));

    String why = model.easel().whyNoneProperty().get();
    assertTrue(why.contains("there is no session file " + file), why);
    assertEquals(List.of(file), model.shelf().asked());
  }
}

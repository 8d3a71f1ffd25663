package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.desk.manners.DeskTools;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All on the calling thread. */
class FindingsModelTest {
  private final Path folder;
  private final Path data;
  private final DeskTools tools;
  private final SimulatedSessions made;
  private final FindingsModel model;

  FindingsModelTest(@TempDir Path folder) throws IOException {
    this.folder = folder;
    this.data = Files.createDirectories(folder.resolve("data"));
    this.tools = DeskToolsForTests.atOnce(folder);
    this.made = new SimulatedSessions(data);
    this.model = new FindingsModel(tools, data);
    model.easel().resize(1000, 600, 1);
  }

  private List<Path> open() {
    return model.shelf().sessions().stream().map(OpenedSession::file).toList();
  }

  @Test
  void openedSessionIsAtTheFrontAndDrawn() {
    Path first = made.usual("Invented Lumengrove 600");
    Path second = made.usual("Invented Lumengrove 700");

    model.open(first);
    Picture one = model.easel().pictureProperty().get();
    model.open(second);

    assertEquals(List.of(first, second), open());
    assertEquals(second, model.shelf().frontProperty().get());
    assertNotNull(one);
    assertNotEquals(one, model.easel().pictureProperty().get());
    OpenedSession session = model.shelf().sessions().get(0);
    assertEquals("Invented Lumengrove 600", session.unit());
    assertEquals("firmware not told", session.firmware());
    assertEquals("PASS", session.words().verdict());
  }

  @Test
  void sessionThatIsOpenAlreadyIsReadAgainAndNotShownTwice() {
    Path file = made.usual("Invented Lumengrove 600");
    model.open(file);
    made.setAside(file, 2, "the load was touched");

    model.open(file);

    assertEquals(List.of(file), open());
    assertEquals("n = 2 (+ 1 set aside)", model.shelf().sessions().get(0).trials());
  }

  @Test
  void whatWasAddedToASessionIsSeenWhenThePageIsLookedAtAgain() throws IOException {
    Path file = made.usual("Invented Lumengrove 600");
    Files.setLastModifiedTime(file, FileTime.from(Instant.EPOCH.plusSeconds(60)));
    model.open(file);
    model.shelf().show(file, false);
    made.setAside(file, 2, "the load was touched");

    model.look();

    OpenedSession session = model.shelf().sessions().get(0);
    assertEquals("n = 2 (+ 1 set aside)", session.trials());
    assertFalse(session.isShown());
  }

  @Test
  void sessionsInTheFolderOfTheLastSeriesAreOfferedToo() throws IOException {
    Path chosen = Files.createDirectory(folder.resolve("chosen"));
    Path there = new SimulatedSessions(chosen).usual("Invented Lumengrove 600");
    Path here = made.usual("Invented Lumengrove 700");
    tools.memory().keep(DeskMemory.SESSIONS_FOLDER, chosen.toString());

    model.look();

    assertEquals(List.of(there, here), model.offers().files());
  }

  @Test
  void fileThatIsNoSessionIsSaidAndTheOthersStay() throws IOException {
    Path good = made.usual("Invented Lumengrove 600");
    Path bad = Files.writeString(folder.resolve("notes.mainsgap"), "no session at all");
    model.open(good);

    model.openAll(List.of(bad, folder.resolve("gone.mainsgap")));

    assertEquals(List.of(good), open());
    assertEquals(good, model.shelf().frontProperty().get());
    assertEquals(2, model.shelf().refused().size());
    assertEquals(
        "Could not open the session file " + bad + ": it is not a Mainsgap session",
        model.shelf().refused().get(0).why());
    assertNotNull(model.easel().pictureProperty().get());

    model.remove(bad);

    assertEquals(1, model.shelf().refused().size());
  }

  @Test
  void brokenSealIsSaidAndMendedFileIsReadAgain() throws IOException {
    Path file = made.usual("Invented Lumengrove 600");
    byte[] whole = Files.readAllBytes(file);
    tamper(file, "PASS", "FAIL");

    model.open(file);

    assertEquals(List.of(), open());
    String why = model.shelf().refused().get(0).why();
    assertTrue(why.contains("seal"), why);

    Files.write(file, whole);
    model.open(file);

    assertEquals(List.of(file), open());
    assertEquals(List.of(), model.shelf().refused());
  }

  private static void tamper(Path file, String was, String is) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    String text = new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1);
    int at = text.indexOf("\"verdict\":\"" + was);
    assertTrue(at >= 0, "the session holds no " + was);
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      raw.seek(at + "\"verdict\":\"".length());
      raw.writeBytes(is);
    }
  }

  @Test
  void removedSessionLeavesTheFigureAndIsOfferedAgain() {
    Path first = made.usual("Invented Lumengrove 600");
    Path second = made.usual("Invented Lumengrove 700");
    model.openAll(List.of(first, second));
    assertEquals(List.of(), model.offers().files());

    model.remove(second);

    assertEquals(List.of(first), open());
    assertEquals(first, model.shelf().frontProperty().get());
    assertEquals(List.of(second), model.offers().files());

    model.remove(first);

    assertNull(model.easel().pictureProperty().get());
    assertNull(model.shelf().frontProperty().get());
  }

  @Test
  void sessionThatIsNotShownIsNotDrawn() {
    Path file = made.usual("Invented Lumengrove 600");
    model.open(file);

    model.shelf().show(file, false);
    assertNull(model.easel().pictureProperty().get());

    model.shelf().show(file, true);
    assertNotNull(model.easel().pictureProperty().get());
  }

  @Test
  void whatWasOpenIsOpenedAgainAndWhatWasRecentIsOffered() throws IOException {
    Path kept = made.usual("Invented Lumengrove 600");
    Path elsewhere = new SimulatedSessions(folder).usual("Invented Lumengrove 700");
    model.openAll(List.of(kept, elsewhere));
    model.remove(elsewhere);
    tools.memory().save();

    FindingsModel next = new FindingsModel(DeskToolsForTests.atOnce(folder), data);
    next.look();

    assertEquals(List.of(kept), next.shelf().sessions().stream().map(OpenedSession::file).toList());
    assertEquals(List.of(elsewhere), next.offers().files());

    Files.delete(kept);
    FindingsModel later = new FindingsModel(DeskToolsForTests.atOnce(folder), data);
    later.open(elsewhere);

    assertEquals(elsewhere, later.shelf().frontProperty().get());
    assertEquals(
        "There is no session file " + kept + "; check the path",
        later.shelf().refused().get(0).why());
  }

  @Test
  void folderOpensItsSessionsAndAnEmptyOneIsTold() throws IOException {
    Path first = made.usual("Invented Lumengrove 600");
    Path second = made.usual("Invented Lumengrove 700");
    Path empty = Files.createDirectory(folder.resolve("empty"));

    model.openAll(List.of(data, empty));

    assertEquals(Set.of(first, second), Set.copyOf(open()));
    assertEquals(
        empty + " is a folder, not a session file; name a file in it",
        model.shelf().refused().get(0).why());
  }
}

package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SessionFaultsTest {
  private final Path folder;
  private final Path file;

  SessionFaultsTest(@TempDir Path folder) {
    this.folder = folder;
    file = folder.resolve("a.mainsgap");
  }

  private void makeSession() {
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      log.append(SessionFixtures.trial(2));
      log.append(SessionFixtures.remark(Remark.Kind.COMPLETE));
    }
  }

  /** What somebody does who has no Mainsgap and all rights. */
  private static void tamper(Path file, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.executeUpdate(sql);
      }
    }
  }

  private static String messageOf(Executable tried) {
    return String.valueOf(assertThrows(SessionException.class, tried).getMessage());
  }

  private static void open(Path file) {
    SessionReader.open(file).close();
  }

  @Test
  void anExistingPathIsLeftAloneAndToldOf() throws IOException {
    Files.writeString(file, "precious");
    assertEquals(
        "the session file "
            + file
            + " exists already; go on with it by --continue, or name another file",
        messageOf(() -> SessionLog.create(file, SessionFixtures.header())));
    assertEquals("precious", Files.readString(file));
  }

  @Test
  void aFolderIsNoSession() {
    assertEquals(
        folder + " is a folder; name a new session file in it",
        messageOf(() -> SessionLog.create(folder, SessionFixtures.header())));
    assertEquals(
        folder + " is a folder, not a session file; name a file in it",
        messageOf(() -> SessionLog.resume(folder)));
  }

  @Test
  void aPathBelowAFileIsToldWithThatFile() throws IOException {
    Files.writeString(file, "a file");
    Path below = file.resolve("deep/b.mainsgap");
    assertEquals(
        "the session file " + below + " lies below " + file + ", which is a file, no folder",
        messageOf(() -> SessionLog.create(below, SessionFixtures.header())));
  }

  @Test
  void aMissingFileIsTold() {
    assertEquals(
        "there is no session file " + file + "; check the path",
        messageOf(() -> SessionLog.resume(file)));
    assertFalse(Files.exists(file));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "no data base at all, only words of some length that go on and on"})
  void whatIsNoSessionIsToldSo(String content) throws IOException {
    Files.writeString(file, content);
    assertTrue(messageOf(() -> open(file)).endsWith(" is not a Mainsgap session"));
  }

  @Test
  void anotherDataBaseIsNoSession() throws SQLException {
    tamper(file, "CREATE TABLE entry (number INTEGER)");
    assertEquals(file + " is not a Mainsgap session", messageOf(() -> open(file)));
  }

  @Test
  void aNewerFormatIsNotGuessedAt() throws SQLException {
    makeSession();
    tamper(file, "PRAGMA user_version = 2");
    assertEquals(
        "the session file "
            + file
            + " has format version 2, this program reads 1 to 1; use a newer version of Mainsgap",
        messageOf(() -> open(file)));
  }

  @ParameterizedTest
  @CsvSource({
    "UPDATE entry SET content = '{}' WHERE number = 2, a session entry is never changed",
    "UPDATE entry SET number = 9 WHERE number = 4, a session entry is never changed",
    "DELETE FROM entry WHERE number = 4, a session entry is never deleted",
    "REPLACE INTO entry SELECT * FROM entry WHERE number = 2, only ever appended",
    "UPDATE block SET packed = x'00', a session block is never changed",
    "DELETE FROM block, a session block is never deleted",
    "REPLACE INTO block SELECT * FROM block WHERE entry = 2, only ever appended"
  })
  void theFileItselfRefusesWhatIsNoAppending(String sql, String complaint) {
    makeSession();
    SQLException refused = assertThrows(SQLException.class, () -> tamper(file, sql));
    assertTrue(String.valueOf(refused.getMessage()).contains(complaint), refused.getMessage());
    open(file);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "UPDATE entry SET content = replace(content, 'PASS', 'FAIL') WHERE number = 3 | entry 3",
        "UPDATE entry SET kind = 'remark' WHERE number = 3 | entry 3",
        "UPDATE entry SET seal = printf('%s%s', substr(seal, 2), substr(seal, 1, 1)) WHERE number = 2 | entry 2",
        "DELETE FROM entry WHERE number = 2 | entry 2",
        "UPDATE block SET packed = x'00' WHERE entry = 3 | entry 3",
        "UPDATE block SET packed ="
            + " (SELECT packed FROM block WHERE entry = 2 AND channel = 'OUTPUT')"
            + " WHERE entry = 3 AND channel = 'OUTPUT' | entry 3",
        "DELETE FROM block WHERE entry = 2 AND channel = 'MAINS' | entry 2",
        "INSERT INTO block SELECT entry, 'MARKER', packed FROM block"
            + " WHERE entry = 2 AND channel = 'MAINS' | entry 2"
      })
  void aBrokenSealNamesItsEntry(String sql, String entry) throws SQLException {
    makeSession();
    tamper(
        file,
        "DROP TRIGGER entries_never_change",
        "DROP TRIGGER entries_stay",
        "DROP TRIGGER blocks_never_change",
        "DROP TRIGGER blocks_stay",
        "DROP TRIGGER blocks_join_the_last_entry",
        sql);
    String broken = "the seal of " + entry + " of the session file " + file + " is broken: ";
    assertTrue(messageOf(() -> SessionLog.resume(file)).startsWith(broken));
    assertTrue(messageOf(this::readAll).startsWith(broken));
  }

  private void readAll() {
    try (SessionReader reader = SessionReader.open(file)) {
      for (LoggedTrial trial : reader.session().trials()) {
        assertEquals(400, reader.capture(trial.number()).time().length());
      }
    }
  }

  @Test
  void aFullDiskIsToldAndNothingLoggedIsLost() {
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.append(SessionFixtures.trial(1));
      String seal = log.lastSeal();
      log.handle().createQuery("PRAGMA max_page_count = 1").mapTo(int.class).one();
      String message = "";
      for (int number = 2; message.isEmpty() && number < 20; number++) {
        message = fillWith(log, number);
      }
      assertEquals(
          "could not add to the session file "
              + file
              + ": the disk is full; make room, then go on with this session",
          message);
      log.handle().createQuery("PRAGMA max_page_count = 100000").mapTo(int.class).one();
      log.append(SessionFixtures.trial(log.nextTrialNumber()));
      assertFalse(log.lastSeal().equals(seal));
    }
    readAll();
  }

  private static String fillWith(SessionLog log, int number) {
    try {
      log.append(SessionFixtures.trial(number));
      return "";
    } catch (SessionException e) {
      return String.valueOf(e.getMessage());
    }
  }

  @Test
  void aReadOnlyFileIsTold() {
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.handle().execute("PRAGMA query_only = 1");
      assertEquals(
          "could not add to the session file "
              + file
              + ": it, or its folder, is read-only; allow writing there or choose another folder",
          messageOf(() -> log.append(SessionFixtures.trial(1))));
    }
  }

  @Test
  void aCrashInTheMiddleOfAnEntryLeavesTheEntriesBefore() throws IOException, SQLException {
    makeSession();
    Path crashed = folder.resolve("crashed.mainsgap");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("PRAGMA cache_size = 1");
      statement.executeUpdate("BEGIN IMMEDIATE");
      statement.executeUpdate(
          "INSERT INTO entry VALUES (5, 'remark', hex(zeroblob(200000)), '"
              + "0".repeat(64)
              + "')");
      statement.executeUpdate("INSERT INTO block VALUES (5, 'OUTPUT', randomblob(200000))");
      Files.copy(file, crashed);
      Files.copy(journalOf(file), journalOf(crashed));
      statement.executeUpdate("ROLLBACK");
    }
    assertTrue(Files.size(crashed) > 2 * Files.size(file), "the torn entry reached the file");
    try (SessionLog log = SessionLog.resume(crashed)) {
      assertEquals(3, log.nextTrialNumber());
      log.append(SessionFixtures.trial(3));
    }
    assertFalse(Files.exists(journalOf(crashed)));
    try (SessionReader reader = SessionReader.open(crashed)) {
      assertEquals(
          List.of(1, 2, 3), reader.session().trials().stream().map(LoggedTrial::number).toList());
    }
  }

  private static Path journalOf(Path file) {
    return file.resolveSibling(file.getFileName() + "-journal");
  }
}

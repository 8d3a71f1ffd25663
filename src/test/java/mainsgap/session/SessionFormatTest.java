package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.OptionalDouble;
import java.util.zip.InflaterInputStream;
import mainsgap.signal.ChannelRole;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The format as its page tells it, without the code that writes it. */
class SessionFormatTest {
  /** Made by version 0.1.0, all in it invented; never made anew. */
  private static final Path GOLDEN = Path.of("test-fixtures", "session", "format-1.mainsgap");

  private static final String GOLDEN_SEAL =
      "fa5b877d0162e66026bee8ea04eab37d05ba427b7d5322c159ac41f51c1032ed";

  private final Path folder;

  SessionFormatTest(@TempDir Path folder) {
    this.folder = folder;
  }

  private Path copyOfGolden() throws IOException {
    return Files.copy(GOLDEN, folder.resolve("copy.mainsgap"));
  }

  @Test
  void sealsAreWhatThePageSays() throws Exception {
    Path file = folder.resolve("a.mainsgap");
    String last;
    try (SessionLog log = SessionLog.create(file, SessionFixtures.header())) {
      log.append(SessionFixtures.remark(Remark.Kind.SERIES_STARTED));
      log.append(SessionFixtures.trial(1));
      log.append(SessionFixtures.refused(2));
      last = log.setAside(1, "a reason with µ", SessionFixtures.NOON);
    }
    assertEquals(last, sealByRowsOf(file));
    assertEquals(GOLDEN_SEAL, sealByRowsOf(copyOfGolden()));
  }

  /** The last seal, from rows alone; fails where one before it does not fit. */
  private static String sealByRowsOf(Path file)
      throws SQLException, IOException, NoSuchAlgorithmException {
    String seal = "0000000000000000000000000000000000000000000000000000000000000000";
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        PreparedStatement entries =
            connection.prepareStatement("SELECT * FROM entry ORDER BY number");
        ResultSet row = entries.executeQuery()) {
      while (row.next()) {
        String sealed =
            String.join(
                "\n",
                "mainsgap session entry 1",
                seal,
                row.getString("number"),
                row.getString("kind"),
                row.getString("content"));
        seal = sha256(sealed.getBytes(StandardCharsets.UTF_8));
        assertEquals(seal, row.getString("seal"));
        checkBlocks(connection, row.getInt("number"), row.getString("content"));
      }
    }
    return seal;
  }

  private static void checkBlocks(Connection connection, int entry, String content)
      throws SQLException, IOException, NoSuchAlgorithmException {
    int channels = 0;
    try (PreparedStatement blocks =
        connection.prepareStatement("SELECT * FROM block WHERE entry = ? ORDER BY channel")) {
      blocks.setInt(1, entry);
      try (ResultSet row = blocks.executeQuery()) {
        while (row.next()) {
          JsonNode channel = channelOf(content, row.getString("channel"));
          byte[] block =
              new InflaterInputStream(new ByteArrayInputStream(row.getBytes("packed")))
                  .readAllBytes();
          assertEquals(channel.get("bytes").asInt(), block.length);
          assertEquals(channel.get("sha256").asText(), sha256(block));
          channels++;
        }
      }
    }
    assertEquals(new ObjectMapper().readTree(content).path("channels").size(), channels);
  }

  private static JsonNode channelOf(String content, String name) throws IOException {
    for (JsonNode channel : new ObjectMapper().readTree(content).get("channels")) {
      if (channel.get("channel").asText().equals(name)) {
        return channel;
      }
    }
    throw new AssertionError("no channel " + name + " in " + content);
  }

  private static String sha256(byte[] bytes) throws NoSuchAlgorithmException {
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
  }

  @Test
  void versionOneIsStillRead() throws IOException {
    try (SessionReader reader = SessionReader.open(copyOfGolden())) {
      Session session = reader.session();
      assertEquals(1, session.formatVersion());
      assertEquals("Invented Lumengrove 600", session.header().unit());
      assertEquals(230, session.header().task().nominalVolts());
      assertEquals(Ending.COMPLETE, session.ending());
      assertEquals(GOLDEN_SEAL, session.lastSeal());
      assertEquals(3, session.trials().size());
      LoggedTrial first = session.trials().get(0);
      assertEquals(OptionalDouble.of(8.142857142857142), first.number("transferTimeMs"));
      assertEquals("refused", session.trials().get(1).figures().get("outcome"));
      assertEquals("invented: opened too early", session.trials().get(2).setAsideReason());
      assertEquals(
          SessionFixtures.capture(1).output().voltsAt(399),
          reader.capture(1).output().voltsAt(399));
      assertEquals(400, reader.capture(3).waveform(ChannelRole.MAINS).orElseThrow().length());
    }
  }

  @Test
  void anOldFileIsNeverChangedByReading() throws IOException {
    Path copy = copyOfGolden();
    SessionReader.open(copy).close();
    assertEquals(-1, Files.mismatch(GOLDEN, copy));
  }
}

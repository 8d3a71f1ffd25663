package mainsgap.link;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import mainsgap.scpi.ReplyTimeoutException;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written down, and that it can be replayed. */
class ConversationFileTest {
  private static final byte[] CODES = new byte[500];
  private static final ScpiOptions OPTIONS =
      ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(100));

  private final Path path;

  ConversationFileTest(@TempDir Path folder) {
    path = folder.resolve("talk.txt");
    for (int i = 0; i < CODES.length; i++) {
      CODES[i] = (byte) (3 * i);
    }
  }

  @Test
  void textIsWrittenAsTextAndABlockInBase64() throws IOException {
    record();
    List<String> lines = Files.readAllLines(path);
    assertEquals("# Mainsgap conversation, format 1", lines.get(0));
    assertEquals("# a test", lines.get(1));
    assertEquals("# begun 2026-01-01T00:00:00Z", lines.get(2));
    assertTrue(lines.get(3).startsWith("0.000000 open TCPIP0::127.0.0.1::"), lines.get(3));
    assertEquals("0.000000 > *IDN?\\n", lines.get(4));
    assertEquals("0.000000 < Invented Bench,Scope \\\\4,1,1.0\\n", lines.get(5));
    assertEquals("0.000000 > :DATA?\\n", lines.get(6));
    assertEquals("0.000000 <= 506 bytes", lines.get(7));
    assertTrue(lines.get(8).startsWith("  IzM1MDAAAwYJ"), lines.get(8));
    assertTrue(lines.contains("0.000000 time-out"), lines::toString);
    assertTrue(lines.contains("0.000000 clear"), lines::toString);
    assertEquals("0.000000 close", lines.get(lines.size() - 1));
  }

  @Test
  void aRecordingReplaysTheSameConversation() throws IOException {
    record();
    RecordedConversation recorded = new RecordedConversation(path);
    try (ScpiInstrument instrument =
        ScpiInstrument.open(recorded.resource(), recorded, OPTIONS, new ManualClock())) {
      converse(instrument);
    }
    recorded.assertFinished();
  }

  @Test
  void anotherRequestThanTheRecordedOneFailsWithItsLine() throws IOException {
    record();
    RecordedConversation recorded = new RecordedConversation(path);
    try (ScpiInstrument instrument =
        ScpiInstrument.open(recorded.resource(), recorded, OPTIONS, new ManualClock())) {
      AssertionError failed = assertThrows(AssertionError.class, () -> instrument.query("*OPC?"));
      assertEquals(
          path + " line 5 has '> *IDN?\\n', but the program sent '*OPC?\\n'", failed.getMessage());
    }
    assertTrue(
        String.valueOf(assertThrows(AssertionError.class, recorded::assertFinished).getMessage())
            .contains("line 5"));
  }

  @Test
  void anExistingFileIsNotWrittenOver() throws IOException {
    Files.writeString(path, "kept");
    LinkException refused =
        assertThrows(
            LinkException.class, () -> ConversationFile.create(path, "a test", new ManualClock()));
    assertEquals(
        "the file " + path + " exists already, and nothing is written over: name another",
        refused.getMessage());
    assertEquals("kept", Files.readString(path));
  }

  @Test
  void aFullFileEndsTheWritingAndNotTheConversation() throws IOException {
    try (LoopbackPeer peer = peer()) {
      ConversationFile file = ConversationFile.create(path, "a test", new ManualClock(), 200);
      try (file;
          ScpiInstrument instrument =
              ScpiInstrument.open(
                  ResourceName.parse(peer.resource()), file, OPTIONS, Clock.system())) {
        converse(instrument);
      }
      assertEquals(
          path + " is full at 200 characters: what came later is not in it",
          file.complaint().orElse(""));
    }
    assertTrue(Files.size(path) <= 200);
  }

  @Test
  void aLinkThatCannotBeOpenedIsInTheFile() throws IOException {
    LoopbackPeer peer = peer();
    peer.close();
    try (ConversationFile file = ConversationFile.create(path, "a test", new ManualClock())) {
      ResourceName resource = ResourceName.parse(peer.resource());
      Deadline deadline = Deadline.after(Duration.ofSeconds(2), Clock.system());
      assertThrows(LinkException.class, () -> file.open(resource, deadline));
    }
    assertTrue(Files.readString(path).contains("0.000000 failed TCPIP0::127.0.0.1::"));
  }

  @Test
  void theEndOfAMessageIsWrittenWhereTheLinkMarksIt() throws IOException {
    Files.writeString(
        path,
        """
        # Mainsgap conversation, format 1
        0.000000 open TCPIP0::127.0.0.1::hislip0::INSTR, ends marked
        0.001000 > *IDN?\\n
        0.002000 < a,b,1,2
        0.002000 end
        0.003000 status 16
        0.004000 close
        """);
    RecordedConversation recorded = new RecordedConversation(path);
    Path second = path.resolveSibling("second.txt");
    Deadline deadline = Deadline.after(Duration.ofSeconds(2), new ManualClock());
    try (ConversationFile file = ConversationFile.create(second, "again", new ManualClock());
        Link link = new RecordedLink(recorded.open(recorded.resource(), deadline), file)) {
      link.write(LoopbackPeer.ascii("*IDN?\n"), deadline);
      ByteBuffer into = ByteBuffer.allocate(4);
      assertEquals(new Received(4, false), link.read(into, deadline));
      into.clear();
      assertEquals(new Received(3, true), link.read(into, deadline));
      assertEquals(16, link.statusByte(deadline).orElse(-1));
    }
    recorded.assertFinished();
    List<String> lines = Files.readAllLines(second);
    assertEquals(
        List.of(
            "0.000000 open TCPIP0::127.0.0.1::hislip0::INSTR, ends marked",
            "0.000000 > *IDN?\\n",
            "0.000000 < a,b,1,2",
            "0.000000 end",
            "0.000000 status 16",
            "0.000000 close"),
        lines.subList(3, lines.size()));
  }

  private void record() throws IOException {
    try (LoopbackPeer peer = peer();
        ConversationFile file = ConversationFile.create(path, "a test", new ManualClock());
        ScpiInstrument instrument =
            ScpiInstrument.open(
                ResourceName.parse(peer.resource()), file, OPTIONS, Clock.system())) {
      converse(instrument);
    }
  }

  private static void converse(ScpiInstrument instrument) {
    assertEquals("Scope \\4", instrument.identity().model());
    assertArrayEquals(CODES, instrument.queryBlock(":DATA?", CODES.length));
    assertThrows(ReplyTimeoutException.class, () -> instrument.query(":UNKN?"));
    assertEquals("0", instrument.query(":LAST?"));
  }

  private static LoopbackPeer peer() throws IOException {
    return new LoopbackPeer()
        .answer("*IDN?", "Invented Bench,Scope \\4,1,1.0")
        .answer(":SYST:ERR?", "0,\"No error\"")
        .answer(":LAST?", "0")
        .answer(":DATA?", LoopbackPeer.bytes(LoopbackPeer.block(CODES)));
  }
}

package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Replies byte for byte. Those of the first tests are of a recorded session with an independent
 * server; the others follow VXI-11 Rev 1.0 and RFC 5531.
 */
@Timeout(20) // the net under a link that waits for ever, not a measurement
class Vxi11LinkTest {
  private static final String CREATED =
      "80000028 XXXXXXXX 00000001 00000000 00000000 00000000 00000000"
          + " 00000000 000000c9 0000cc65 00000400";
  private static final String WRITTEN =
      "80000020 XXXXXXXX 00000001 00000000 00000000 00000000 00000000 00000000 00000006";
  private static final String HEAD = "XXXXXXXX 00000001 00000000 00000000 00000000 00000000 ";
  private static final byte[] QUESTION = "*IDN?\n".getBytes(US_ASCII);

  private final List<AutoCloseable> opened = new ArrayList<>();

  @AfterEach
  void close() throws Exception {
    for (AutoCloseable each : opened) {
      each.close();
    }
  }

  @Test
  void aRecordedReplyIsRead() throws IOException {
    Link link =
        link(
            WRITTEN,
            "80000038 "
                + HEAD
                + "00000000 00000004 00000012"
                + " 6d792069 6e737472 756d656e 74207a65 726f0000");
    assertEquals("my instrument zero", ask(link));
  }

  @Test
  void fragmentsAreJoined() throws IOException {
    Link link =
        link(
            WRITTEN,
            "00000002 XXXX 00000000 00000016 XXXX 00000001 00000000 00000000 00000000 00000000"
                + " 0000000d 00000000 00000004 00000003 31 80000003 2e35 00");
    assertEquals("1.5", ask(link));
  }

  /** Some instruments leave out the padding (RFC 4506, 4.10). */
  @Test
  void aReplyWithoutPaddingIsTaken() throws IOException {
    Link link = link(WRITTEN, "80000027 " + HEAD + "00000000 00000004 00000003 312e35");
    assertEquals("1.5", ask(link));
  }

  @Test
  void aReplyToAnotherCallIsPassedOver() throws IOException {
    Link link =
        link(
            WRITTEN,
            "80000028 00000099 00000001 00000000 00000000 00000000 00000000"
                + " 00000000 00000004 00000003 392e3900 80000028 "
                + HEAD
                + "00000000 00000004 00000003 312e3500");
    assertEquals("1.5", ask(link));
  }

  /** Rule B.6.27: error 15 comes with what had come until then, and the rest with the next read. */
  @Test
  void dataThatComeWithATimeOutAreKept() throws IOException {
    Link link =
        link(
            WRITTEN,
            "80000028 " + HEAD + "0000000f 00000000 00000001 31000000",
            "80000028 " + HEAD + "00000000 00000004 00000002 2e350000");
    assertEquals("1.5", ask(link));
  }

  /** Reason 0 without an error: the instrument's buffer was full, and there is more. */
  @Test
  void anEmptyReplyIsAskedForAgain() throws IOException {
    Link link =
        link(
            WRITTEN,
            "80000024 " + HEAD + "00000000 00000000 00000000",
            "80000028 " + HEAD + "00000000 00000004 00000003 312e3500");
    assertEquals("1.5", ask(link));
  }

  @Test
  void anInstrumentThatIsNotReadySaysSoAndTheLinkGoesOn() throws IOException {
    Link link =
        link(
            WRITTEN,
            "80000024 " + HEAD + "0000000f 00000000 00000000",
            "80000028 " + HEAD + "00000000 00000004 00000003 312e3500");
    link.write(QUESTION, within(2000));
    LinkTimeoutException e =
        assertThrows(
            LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(10), within(2000)));
    assertSays(e, "inst0", "asked to send data, answers error 15: it did not manage in the time");
    ByteBuffer into = ByteBuffer.allocate(10);
    assertEquals(new Received(3, true), link.read(into, within(2000)));
  }

  @Test
  void theStatusByteLeavesAReplyUnderWayAlone() throws IOException {
    Link link =
        link(
            WRITTEN,
            "80000028 " + HEAD + "00000000 00000004 00000003 312e3500",
            "80000020 " + HEAD + "00000000 00000050");
    link.write(QUESTION, within(2000));
    ByteBuffer into = ByteBuffer.allocate(10);
    assertEquals(new Received(1, false), link.read(into.slice(0, 1), within(2000)));
    assertEquals(0x50, link.statusByte(within(2000)).orElseThrow());
    assertEquals(new Received(2, true), link.read(into.slice(1, 9), within(2000)));
    assertEquals("1.5", text(into.position(3)));
  }

  @Test
  void moreDataThanAskedForAreRefusedBeforeAnyIsTaken() throws IOException {
    Link link = link(WRITTEN, "ffffffff " + HEAD + "00000000 00000004 7ffffff0 312e3500");
    link.write(QUESTION, within(2000));
    LinkClosedException e =
        assertThrows(
            LinkClosedException.class, () -> link.read(ByteBuffer.allocate(10), within(2000)));
    assertSays(e, "claims 2147483632 bytes of data where at most 262144 were asked for");
    assertSays(e, "hung up on", "connect again");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "goes on behind its end | 8000002c HH 00000000 00000004 00000003 312e3500 00000000",
        "ends too early | 80000024 HH 00000000 00000004 00000003",
        "ends too early | 80000008 XXXXXXXX 00000001",
        "wrong ONC/RPC message type | 80000008 XXXXXXXX 00000000",
        "procedure not available | 80000018 XXXXXXXX 00000001 00000000 00000000 00000000 00000003",
        "authentification error | 80000014 XXXXXXXX 00000001 00000001 00000001 00000001",
      })
  void whatBreaksTheRulesIsNamed(String what, String reply) throws IOException {
    Link link = link(WRITTEN, reply.replace("HH", HEAD));
    link.write(QUESTION, within(2000));
    LinkClosedException e =
        assertThrows(
            LinkClosedException.class,
            () -> {
              while (!link.read(ByteBuffer.allocate(10), within(2000)).messageEnded()) {}
            });
    assertSays(e, "does not answer as VXI-11 wants it (", what);
  }

  /** Records without end, none of them the reply: time ends them, and no memory is used. */
  @Test
  void emptyFragmentsWithoutEndAreLeftAtTheDeadline() throws IOException {
    Link link = link(WRITTEN, "00000000".repeat(100_000));
    link.write(QUESTION, within(2000));
    assertThrows(LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(10), within(100)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "00000003 | error 3: it has no such device, or another program holds it",
        "00000009 | error 9: it has no room for another link",
        "0000000b | error 11: another program has locked it",
        "0000002a | error 42: VXI-11 does not say what that means",
      })
  void aLinkThatIsRefusedSaysWhy(String error, String meaning) {
    LinkException e =
        assertThrows(
            LinkException.class,
            () -> open("80000028 " + HEAD + error + " 00000000 00000000 00000000"));
    assertSays(e, "::inst0,", "asked to open inst0, answers " + meaning);
  }

  @Test
  void anInstrumentThatTakesNoBytesIsRefused() {
    LinkException e =
        assertThrows(
            LinkException.class,
            () -> open("80000028 " + HEAD + "00000000 000000c9 00000400 00000000"));
    assertSays(e, "takes messages of 0 bytes, where 1024 is the least");
  }

  @Test
  void aHostWithoutVxi11SaysSo() throws IOException {
    try (ServerSocket deaf = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      ResourceName name =
          ResourceName.parse("TCPIP::127.0.0.1::inst0," + deaf.getLocalPort() + "::INSTR");
      LinkTimeoutException e =
          assertThrows(LinkTimeoutException.class, () -> name.open(within(100)));
      assertSays(e, "sent nothing in the time allowed");
    }
  }

  @Test
  void aMessageIsCutAndOnlyItsLastPieceEndsIt() throws IOException {
    try (Vxi11Peer peer = new Vxi11Peer()) {
      peer.answer("x".repeat(2500), LinkPeer.Manner.WHOLE, LoopbackPeer.ascii("1.5\n"));
      try (Link link = peer.open(within(2000))) {
        link.write(("x".repeat(2500) + "\n").getBytes(US_ASCII), within(2000));
        assertEquals(4, link.read(ByteBuffer.allocate(10), within(2000)).bytes());
      }
      assertEquals(List.of(10, 11, 11, 11, 12, 23), peer.called(), "destroyed at the end");
    }
  }

  @Test
  void clearingEndsACallThatIsUnderWayByTheAbortChannel() throws IOException {
    try (Vxi11Peer peer = new Vxi11Peer();
        Link link = peer.open(within(2000))) {
      link.write("NEVER?\n".getBytes(US_ASCII), within(2000));
      assertThrows(
          LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(10), within(50)));
      link.clear(within(2000));
      assertEquals(List.of(10, 11, 12, 1, 15), peer.called());
    }
  }

  private static String ask(Link link) {
    link.write(QUESTION, within(2000));
    ByteBuffer into = ByteBuffer.allocate(100);
    boolean ended = false;
    while (!ended) {
      ended = link.read(into, within(2000)).messageEnded();
    }
    return text(into);
  }

  private static String text(ByteBuffer bytes) {
    return US_ASCII.decode(bytes.flip()).toString();
  }

  /** A link to a peer that meets the first calls with these replies, the first of them CREATED. */
  private Link link(String... replies) throws IOException {
    List<String> all = new ArrayList<>(List.of(CREATED));
    all.addAll(List.of(replies));
    return open(all.toArray(String[]::new));
  }

  private Link open(String... replies) throws IOException {
    ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    opened.add(server);
    Thread thread = new Thread(() -> serve(server, replies), "recorded-peer");
    thread.setDaemon(true);
    thread.start();
    Link link =
        ResourceName.parse("TCPIP::127.0.0.1::inst0," + server.getLocalPort()).open(within(2000));
    opened.add(0, link);
    return link;
  }

  /** Each X of a reply stands for the number of the call. */
  private static void serve(ServerSocket server, String... replies) {
    try (Socket client = server.accept()) {
      DataInputStream in = new DataInputStream(client.getInputStream());
      OutputStream out = client.getOutputStream();
      for (String reply : replies) {
        byte[] call = in.readNBytes(in.readInt() & 0x7FFF_FFFF);
        String xid = HexFormat.of().formatHex(call, 0, 4);
        String hex = reply.replace(" ", "").replace("XXXXXXXX", xid);
        int half = hex.indexOf("XXXX");
        if (half >= 0) {
          hex = hex.replaceFirst("XXXX", xid.substring(0, 4));
          hex = hex.replaceFirst("XXXX", xid.substring(4));
        }
        out.write(HexFormat.of().parseHex(hex));
      }
      in.readAllBytes();
    } catch (IOException e) {
      // the client left, or the test is over
    }
  }

  private static Deadline within(int millis) {
    return Deadline.after(Duration.ofMillis(millis), Clock.system());
  }
}

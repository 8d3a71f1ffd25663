package mainsgap.simulation;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.time.Duration;
import java.util.HexFormat;
import mainsgap.link.Link;
import mainsgap.link.LinkClosedException;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ReplyTimeoutException;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The simulated instruments by HiSLIP: bytes of the fact sheet, and our own client. */
@Timeout(20)
class HislipServerTest {
  private static final HexFormat HEX = HexFormat.of();
  private static final ScpiOptions OPTIONS =
      ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(400));

  private SimulatedBench bench;
  private ScpiInstrument digitizer;

  @BeforeEach
  void connect() {
    bench = SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.NEVER_RETURNS, 3));
    digitizer = ScpiInstrument.open(resource(), OPTIONS, Clock.system());
  }

  @AfterEach
  void disconnect() {
    digitizer.close();
    bench.close();
  }

  /**
   * The session that an independent implementation had with another (IVI-6.1, seen on the wire).
   */
  @Test
  void aSessionHasTheBytesOfTheStandard() throws IOException {
    try (Socket synchronous = socket();
        Socket asynchronous = socket()) {
      send(synchronous, "48530000010047540000000000000007" + "6869736c697030");
      String welcome = receive(synchronous, 16);
      assertEquals("485301000100", welcome.substring(0, 12));
      assertEquals("0000000000000000", welcome.substring(16));
      send(asynchronous, "485311000000" + welcome.substring(12, 16) + "0000000000000000");
      assertEquals("48531200", receive(asynchronous, 16).substring(0, 8));
      send(asynchronous, "48530f00000000000000000000000008" + "0000000000100000");
      assertEquals("48531000000000000000000000000008", receive(asynchronous, 16));
      receive(asynchronous, 8);
      send(asynchronous, "48531500fffffefe0000000000000000");
      assertEquals("48531600000000000000000000000000", receive(asynchronous, 16));
      send(synchronous, "48530700ffffff000000000000000006" + "2a49444e3f0a");
      assertEquals("48530700ffffff00", receive(synchronous, 16).substring(0, 16));
      receive(synchronous, digitizer.query("*IDN?").length() + 1);
      // message available (bit 4) until the client says that it took the reply
      send(asynchronous, "48531500ffffff000000000000000000");
      assertEquals("48531610000000000000000000000000", receive(asynchronous, 16));
      send(asynchronous, "48531501ffffff000000000000000000");
      assertEquals("48531600000000000000000000000000", receive(asynchronous, 16));
      send(asynchronous, "48531300000000000000000000000000");
      assertEquals("48531700000000000000000000000000", receive(asynchronous, 16));
      send(synchronous, "48530801000000000000000000000000"); // asks for overlapped mode
      assertEquals("48530901000000000000000000000000", receive(synchronous, 16));
    }
  }

  @Test
  void overlappedRepliesHaveNumbersOfTheServer() throws IOException {
    try (Socket synchronous = socket();
        Socket asynchronous = socket()) {
      open(synchronous, asynchronous);
      send(asynchronous, "48531300000000000000000000000000");
      receive(asynchronous, 16);
      send(synchronous, "48530801000000000000000000000000");
      receive(synchronous, 16);
      String opc = "2a4f50433f0a";
      send(synchronous, "48530700ffffff0400000000" + "00000006" + opc);
      assertEquals("48530700ffffff000000000000000002310a", receive(synchronous, 18));
      send(synchronous, "48530700ffffff0600000000" + "00000006" + opc);
      assertEquals("48530700ffffff020000000000000002310a", receive(synchronous, 18));
    }
  }

  /** A client may speak as soon as it hears that its second connection is known. */
  @Test
  void aSessionIsOpenWhenItSaysSo() throws IOException {
    for (int session = 0; session < 12; session++) {
      try (Socket synchronous = socket();
          Socket asynchronous = socket()) {
        open(synchronous, asynchronous);
        send(synchronous, "48530700ffffff000000000000000006" + "2a4f50433f0a");
        assertEquals("48530700ffffff000000000000000002310a", receive(synchronous, 18));
      }
    }
  }

  /** 3.1.1: a client that sends on without taking the reply interrupts it (error -410). */
  @Test
  void aReplyThatWasNotTakenIsAnErrorInTheQueue() throws IOException {
    try (Socket synchronous = socket();
        Socket asynchronous = socket()) {
      open(synchronous, asynchronous);
      send(synchronous, "48530700ffffff000000000000000006" + "2a4f50433f0a");
      receive(synchronous, 18);
      send(synchronous, "48530700ffffff020000000000000006" + "2a4f50433f0a");
      receive(synchronous, 18);
      // asked once and by hand: a client that asks again on a slow machine finds the queue empty
      String ask = HEX.formatHex(":SYST:ERR?\n".getBytes(US_ASCII));
      send(synchronous, "48530701ffffff04000000000000000b" + ask);
      String error = "-410,\"Query INTERRUPTED\"\n";
      assertEquals(
          "48530700ffffff040000000000000019" + HEX.formatHex(error.getBytes(US_ASCII)),
          receive(synchronous, 16 + error.length()));
    }
  }

  @Test
  void whatIsNoHislipIsRefused() throws IOException {
    try (Socket synchronous = socket()) {
      send(synchronous, HEX.formatHex("GET / HTTP/1.1\r\n".getBytes(US_ASCII)));
      assertEquals("48530201000000000000000000000000", receive(synchronous, 16));
    }
  }

  @Test
  void aBlockIsTheSameAsOverTheRawSocket() {
    try (ScpiInstrument raw =
        ScpiInstrument.open(
            ResourceName.parse(bench.resource(SimulatedInstrument.DIGITIZER)),
            OPTIONS,
            Clock.system())) {
      record(300_000);
      byte[] samples = digitizer.queryBlock(":TRAC:DATA? CH1", 1_200_000);
      assertEquals(1_200_000, samples.length);
      assertArrayEquals(samples, raw.queryBlock(":TRAC:DATA? CH1", 1_200_000));
    }
  }

  @Test
  void statusComesOnItsOwnChannel() {
    try (Link link = resource().open(Deadline.after(Duration.ofSeconds(2), Clock.system()))) {
      digitizer.command(":NO:SUCH:COMMAND");
      digitizer.query("*OPC?");
      int status =
          link.statusByte(Deadline.after(Duration.ofSeconds(2), Clock.system())).getAsInt();
      assertEquals(4, status & 4, "the error queue holds something");
    }
  }

  @Test
  void faultsAreThoseOfTheRawSocket() {
    record(1000);
    bench.setFault(ScopeFault.SLOW);
    assertEquals(4000, digitizer.queryBlock(":TRAC:DATA? CH1", 4000).length);
    bench.setFault(ScopeFault.SHORT_BLOCK);
    assertEquals(2000, digitizer.queryBlock(":TRAC:DATA? CH1", 4000).length);
    bench.setFault(ScopeFault.SILENT);
    assertThrows(ReplyTimeoutException.class, () -> digitizer.query("*OPC?"));
    bench.setFault(ScopeFault.STALLS_IN_MID_BLOCK);
    ReplyTimeoutException stalled =
        assertThrows(
            ReplyTimeoutException.class, () -> digitizer.queryBlock(":TRAC:DATA? CH1", 4000));
    assertSays(stalled, "after 2000 of 4000 bytes of data");
    bench.setFault(ScopeFault.CLOSES_IN_MID_BLOCK);
    assertThrows(LinkClosedException.class, () -> digitizer.queryBlock(":TRAC:DATA? CH1", 4000));
  }

  @Test
  void aDeviceClearInTheMiddleOfABlockLeavesNothingOfIt() {
    record(300_000);
    assertThrows(RuntimeException.class, () -> digitizer.queryBlock(":TRAC:DATA? CH1", 1000));
    assertEquals("1", digitizer.query("*OPC?"));
  }

  private void record(int points) {
    digitizer.command(":SENS:SWE:POIN " + points);
    digitizer.command(":SENS:SWE:TINT 1E-6");
    digitizer.command(":INIT");
    assertEquals("1", digitizer.query("*OPC?"));
  }

  private ResourceName resource() {
    return bench.served().stream()
        .filter(
            served ->
                served.instrument() == SimulatedInstrument.DIGITIZER
                    && served.link().equals("HiSLIP"))
        .map(served -> ResourceName.parse(served.resource()))
        .findFirst()
        .orElseThrow();
  }

  private Socket socket() throws IOException {
    int port = ((ResourceName.Hislip) resource()).port();
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout(5000);
    return socket;
  }

  private static void open(Socket synchronous, Socket asynchronous) throws IOException {
    send(synchronous, "48530000010047540000000000000007" + "6869736c697030");
    String session = receive(synchronous, 16).substring(12, 16);
    send(asynchronous, "485311000000" + session + "0000000000000000");
    receive(asynchronous, 16);
  }

  private static void send(Socket socket, String hex) throws IOException {
    socket.getOutputStream().write(HEX.parseHex(hex));
  }

  private static String receive(Socket socket, int bytes) throws IOException {
    return HEX.formatHex(socket.getInputStream().readNBytes(bytes));
  }
}

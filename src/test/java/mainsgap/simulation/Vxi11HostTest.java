package mainsgap.simulation;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.DataInputStream;
import java.io.IOException;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HexFormat;
import mainsgap.link.Link;
import mainsgap.link.LinkException;
import mainsgap.link.LinkTimeoutException;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The simulated instruments by VXI-11; calls byte for byte as in VXI-11 Rev 1.0 and RFC 5531. */
@Timeout(30) // the net under a wait without end, not a measurement
class Vxi11HostTest {
  private SimulatedBench bench;

  @BeforeEach
  void start() {
    bench = SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
  }

  @AfterEach
  void close() {
    bench.close();
  }

  @Test
  void everyInstrumentAnswersToADeviceNameOfItsOwn() {
    for (Served served : bench.served()) {
      if (served.link().equals("VXI-11")) {
        ResourceName raw = ResourceName.parse(bench.resource(served.instrument()));
        try (ScpiInstrument ours = open(ResourceName.parse(served.resource()));
            ScpiInstrument same = open(raw)) {
          assertEquals(same.query("*IDN?"), ours.query("*IDN?"));
        }
      }
    }
  }

  @Test
  void anotherDeviceNameIsNotAccessible() {
    String other = resource().replace("inst1", "inst99");
    LinkException e =
        assertThrows(
            LinkException.class, () -> ResourceName.parse(other).open(within(2000)).close());
    assertSays(e, "answers error 3: it has no such device");
  }

  @Test
  void theStatusByteTellsThatAnAnswerWaitsAndAnError() {
    try (Link link = ResourceName.parse(resource()).open(within(2000))) {
      link.write("*CLS;*IDN?\n".getBytes(StandardCharsets.US_ASCII), within(2000));
      assertEquals(0x10, link.statusByte(within(2000)).orElseThrow());
      link.write("*ESR?\n".getBytes(StandardCharsets.US_ASCII), within(2000));
      ByteBuffer answer = ByteBuffer.allocate(100);
      link.read(answer, within(2000));
      // IEEE 488.2 6.3.2.3: the answer that nobody read was interrupted; QYE is bit 2
      assertEquals("4\n", StandardCharsets.US_ASCII.decode(answer.flip()).toString());
      assertEquals(0x04, link.statusByte(within(2000)).orElseThrow());
    }
  }

  @Test
  void silenceIsAnErrorInTimeAndDeviceClearMendsIt() {
    bench.setFault(ScopeFault.SILENT);
    try (Link link = ResourceName.parse(resource()).open(within(2000))) {
      link.write("*IDN?\n".getBytes(StandardCharsets.US_ASCII), within(2000));
      LinkTimeoutException e =
          assertThrows(
              LinkTimeoutException.class, () -> link.read(ByteBuffer.allocate(10), within(200)));
      assertSays(e, "error 15");
      bench.setFault(ScopeFault.NONE);
      link.clear(within(2000));
      link.write("*IDN?\n".getBytes(StandardCharsets.US_ASCII), within(2000));
      assertTrue(link.read(ByteBuffer.allocate(100), within(2000)).messageEnded());
    }
  }

  /** RFC 5531, 9: PROG_UNAVAIL is 1, PROG_MISMATCH 2 with the versions, PROC_UNAVAIL 3. */
  @Test
  void callsThatItCannotTakeAreRefusedByTheRules() throws IOException {
    String rest = " 0000000a 00000000 00000000 00000000 00000000";
    String refused = "80000018 00000007 00000001 00000000 00000000 00000000 0000000";
    assertEquals(
        refused + "1", answer("80000028 00000007 00000000 00000002 000607b9 00000001" + rest, 28));
    assertEquals(
        "80000020 00000007 00000001 00000000 00000000 00000000 00000002 00000001 00000001",
        answer("80000028 00000007 00000000 00000002 000607af 00000002" + rest, 36));
    assertEquals(
        refused + "3",
        answer(
            "80000028 00000007 00000000 00000002 000607af 00000001"
                + rest.replace("0000000a", "00000063"),
            28));
  }

  /** What claims more than any message has is hung up on, and nothing of it is kept. */
  @Test
  void aFragmentThatClaimsTooMuchEndsTheConnection() {
    assertThrows(IOException.class, () -> answer("ffffffff 00000007", 4));
    assertThrows(IOException.class, () -> answer("00000000 00000000", 4));
  }

  private String answer(String call, int bytes) throws IOException {
    ResourceName.Vxi11 name = (ResourceName.Vxi11) ResourceName.parse(resource());
    try (Socket socket = new Socket(name.host(), name.port())) {
      socket.setSoTimeout(5000);
      socket.getOutputStream().write(HexFormat.of().parseHex(call.replace(" ", "")));
      byte[] answer = new byte[bytes];
      new DataInputStream(socket.getInputStream()).readFully(answer);
      return HexFormat.of().formatHex(answer).replaceAll("(.{8})(?=.)", "$1 ");
    }
  }

  private String resource() {
    return bench.served().stream()
        .filter(served -> served.instrument() == SimulatedInstrument.TEN_FIELD_SCOPE)
        .filter(served -> served.link().equals("VXI-11"))
        .map(Served::resource)
        .findFirst()
        .orElseThrow();
  }

  private static ScpiInstrument open(ResourceName resource) {
    return ScpiInstrument.open(resource, ScpiOptions.standard(), Clock.system());
  }

  private static Deadline within(int millis) {
    return Deadline.after(Duration.ofMillis(millis), Clock.system());
  }
}

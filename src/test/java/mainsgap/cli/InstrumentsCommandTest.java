package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.MulticastAnnouncer;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looking around, probing, trying and recording, as a user does. */
class InstrumentsCommandTest {
  private static final InetAddress OWN = InetAddress.getLoopbackAddress();
  private static final SimulatedInstrument SCOPE = SimulatedInstrument.TEN_FIELD_SCOPE;

  private final Path folder;

  InstrumentsCommandTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @Test
  void anAnnouncedInstrumentIsListedWithItsLinksAndNothingIsSentToIt() throws IOException {
    try (LoopbackPeer peer = new LoopbackPeer();
        MulticastAnnouncer neighbour = announced(peer)) {
      neighbour.start();
      CommandRun run = CommandRun.of("instruments", "--wait=2500ms");
      assertEquals(0, run.exit(), run.err());
      assertTrue(run.err().startsWith("listening for instruments"), run.err());
      assertTrue(
          run.out().contains("Invented Bench Scope 4, serial 17, firmware 1.0 (announced)"),
          run.out());
      int socket = run.out().indexOf("TCPIP0::127.0.0.1::" + peer.port() + "::SOCKET");
      int hislip = run.out().indexOf("TCPIP0::127.0.0.1::hislip0::INSTR");
      assertTrue(0 < socket && socket < hislip, run.out());
      assertTrue(run.out().contains("the same, by another link"), run.out());
      assertEquals(0, peer.connections());
    }
  }

  @Test
  void onRequestItIsAskedWhoItIsAndNothingElse() throws IOException {
    try (LoopbackPeer peer = new LoopbackPeer().answer("*IDN?", "Other Bench,Scope 5,18,2.0");
        MulticastAnnouncer neighbour = announced(peer)) {
      neighbour.start();
      CommandRun run = CommandRun.of("instruments", "--wait=2500ms", "--identify", "--format=json");
      assertEquals(0, run.exit(), run.err());
      JsonNode found =
          StreamSupport.stream(
                  new ObjectMapper().readTree(run.out()).get("instruments").spliterator(), false)
              .filter(one -> one.get("name").asText().equals("Invented Scope 4"))
              .findFirst()
              .orElseThrow();
      assertEquals("asked", found.get("identity").asText());
      assertEquals("Scope 5", found.get("model").asText());
      assertEquals(2, found.get("links").size());
      assertEquals(List.of("*IDN?"), peer.received());
    }
  }

  @Test
  void oneThatDoesNotSayWhoItIsKeepsWhatItAnnounces() throws IOException {
    try (LoopbackPeer silent = new LoopbackPeer();
        MulticastAnnouncer neighbour = announced(silent)) {
      neighbour.start();
      CommandRun run = CommandRun.of("instruments", "--wait=2500ms", "--identify");
      assertEquals(0, run.exit(), run.err());
      assertTrue(run.out().contains("Scope 4, serial 17, firmware 1.0 (announced)"), run.out());
      assertTrue(run.out().contains("it does not say who it is: "), run.out());
      assertTrue(
          silent.received().stream()
              .allMatch(line -> line.equals("*IDN?") || line.equals(":SYST:ERR?")),
          () -> String.valueOf(silent.received()));
    }
  }

  @Test
  void aProbeShowsWhatEachQuestionGaveAndWhichProfileFits() {
    try (SimulatedBench bench = bench(ScopeFault.NONE)) {
      CommandRun run = CommandRun.of("instruments", "--probe=" + bench.resource(SCOPE));
      assertEquals(0, run.exit(), run.err());
      assertTrue(run.out().contains("scpi-1999-digitizer: does not fit"), run.out());
      assertTrue(run.out().contains("silence for 1 s, then device clear"), run.out());
      assertTrue(run.out().contains("its error queue"), run.out());
      assertTrue(run.out().contains("ten-field-preamble: fits"), run.out());
      assertTrue(run.out().contains("'STOP', as wanted"), run.out());
    }
  }

  @Test
  void anInstrumentThatNoProfileFitsIsCodeThreeWithTheReasons() throws IOException {
    try (LoopbackPeer peer =
        new LoopbackPeer()
            .answer("*IDN?", "Invented Bench,Meter,1,1.0")
            .answer(":SYST:ERR?", "0,\"No error\"")
            .answer(":TRIG:STAT?", "NO SUCH\u001b[2J THING")) {
      CommandRun run = CommandRun.of("instruments", "--probe=" + peer.resource(), "--format=json");
      assertEquals(3, run.exit(), run.err());
      assertTrue(run.err().contains("mainsgap: no instrument profile fits Invented Bench Meter"));
      assertFalse((run.out() + run.err()).contains("\u001b"), run.out());
      JsonNode probe = new ObjectMapper().readTree(run.out()).get("probe");
      assertTrue(probe.get("profile").isNull(), run.out());
      probe
          .get("profiles")
          .forEach(profile -> assertEquals("does not fit", profile.get("fit").asText()));
    }
  }

  @Test
  void aTryNeedsTheCautionsAtEveryAddressAndSendsNothingBefore() throws IOException {
    try (LoopbackPeer peer = new LoopbackPeer()) {
      CommandRun run =
          CommandRun.of(
              "instruments", "--try=ten-field-preamble", "--instrument=" + peer.resource());
      assertEquals(2, run.exit(), run.err());
      assertTrue(run.err().contains("local codes"), run.err());
      assertTrue(run.err().contains("add --cautions-read"), run.err());
      assertEquals("", run.out());
      assertEquals(0, peer.connections());
    }
  }

  @Test
  void aTryExplainsTheWholeCaptureAndRecordsIt() throws IOException {
    Path talk = folder.resolve("talk.txt");
    try (SimulatedBench bench = bench(ScopeFault.NONE)) {
      CommandRun run =
          CommandRun.of(
              "instruments",
              "--try=" + SCOPE.profile(),
              "--instrument=" + bench.resource(SCOPE),
              "--cautions-read",
              "--record=" + talk);
      assertEquals(0, run.exit(), run.err());
      assertTrue(run.out().contains("'commands.arm' in the profile starts one acquisition"));
      assertTrue(run.out().contains("complete: the record is whole"), run.out());
      assertTrue(run.out().contains("The whole capture works."), run.out());
      assertTrue(run.out().contains("10000 samples in 0.2"), run.out());
      String written = Files.readString(talk);
      assertTrue(written.startsWith("# Mainsgap conversation, format 1\n"), written);
      assertTrue(written.contains(" > :SING\\n\n"), written);
      assertTrue(written.endsWith(" close\n"), written);

      CommandRun again =
          CommandRun.of("instruments", "--probe=" + bench.resource(SCOPE), "--record=" + talk);
      assertEquals(2, again.exit(), again.err());
      assertTrue(again.err().contains("exists already"), again.err());
      assertEquals(written, Files.readString(talk));
    }
  }

  @Test
  void aTryThatFailsShowsHowFarItCame() {
    try (SimulatedBench bench = bench(ScopeFault.SHORT_BLOCK)) {
      CommandRun run =
          CommandRun.of(
              "instruments",
              "--try=" + SCOPE.profile(),
              "--probe=" + bench.resource(SCOPE),
              "--cautions-read");
      assertEquals(4, run.exit(), run.err());
      assertTrue(run.out().contains("ten-field-preamble: fits"), run.out());
      assertTrue(run.out().contains(":WAV:PRE?"), run.out());
      assertFalse(run.out().contains("The whole capture works."), run.out());
      assertTrue(run.err().contains("mainsgap: reading channel 1: "), run.err());
    }
  }

  @Test
  void anUnknownProfileIsCodeTwoAndNobodyAtTheOtherEndCodeFour() throws IOException {
    LoopbackPeer peer = new LoopbackPeer();
    peer.close();
    CommandRun unknown =
        CommandRun.of(
            "instruments", "--try=mine", "--instrument=" + peer.resource(), "--cautions-read");
    assertEquals(2, unknown.exit(), unknown.err());
    assertTrue(unknown.err().contains("there is no instrument profile 'mine'"), unknown.err());
    CommandRun nobody = CommandRun.of("instruments", "--probe=" + peer.resource());
    assertEquals(4, nobody.exit(), nobody.err());
    assertTrue(nobody.err().contains("cannot be reached"), nobody.err());
  }

  @Test
  void aStopEndsTheListening() {
    CommandRun run = CommandRun.stoppedAt("listening", "instruments", "--wait=60s");
    assertEquals(130, run.exit(), run.err());
  }

  private static MulticastAnnouncer announced(LoopbackPeer peer) throws IOException {
    String[] texts = {
      "txtvers=1",
      "Manufacturer=Invented Bench",
      "Model=Scope 4",
      "SerialNumber=17",
      "FirmwareVersion=1.0"
    };
    return new MulticastAnnouncer(OWN)
        .having("_hislip._tcp", "Invented Scope 4", 4880, OWN)
        .having("_scpi-raw._tcp", "Invented Scope 4", peer.port(), OWN, texts)
        .having("_lxi._tcp", "Invented Scope 4", 80, OWN, texts);
  }

  private static SimulatedBench bench(ScopeFault fault) {
    return SimulatedBench.start(
        SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7).withFault(fault));
  }
}

package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;

class SimulateCommandTest {
  private static final String RESOURCE = "TCPIP0?::127\\.0\\.0\\.1::\\S+::(SOCKET|INSTR)";

  @Test
  void eachInstrumentHasItsResourceNameOnStandardOutput() {
    CommandRun run = untilStopped("simulate");
    assertEquals(130, run.exit(), run.err());
    assertTrue(run.out().lines().count() >= 2, run.out());
    run.out().lines().forEach(line -> assertTrue(line.matches(RESOURCE + " +\\S.*  \\S+"), line));
    assertTrue(run.err().contains("Ctrl-C"), run.err());
  }

  @Test
  void scriptsGetTheResourceNamesAsJson() throws IOException {
    CommandRun run = untilStopped("simulate", "--unit=never-returns", "--seed=4", "--format=json");
    assertEquals(130, run.exit(), run.err());
    JsonNode document = new ObjectMapper().readTree(run.out());
    assertEquals("never-returns", document.get("unit").asText());
    assertEquals(4, document.get("seed").asInt());
    assertTrue(document.get("instruments").size() >= 2, run.out());
    document
        .get("instruments")
        .forEach(
            instrument -> {
              assertTrue(instrument.get("resource").asText().matches(RESOURCE), run.out());
              assertTrue(instrument.hasNonNull("profile"), run.out());
            });
  }

  @Test
  void portsOfOnesOwnChoiceAreTakenAndABusyOneIsReported() throws IOException {
    try (ServerSocket held = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      CommandRun run = untilStopped("simulate", "--port=ten-field-preamble=" + held.getLocalPort());
      assertEquals(4, run.exit(), run.err());
      assertTrue(run.err().contains(Integer.toString(held.getLocalPort())), run.err());
    }
  }

  private static CommandRun untilStopped(String... words) {
    StopRequest stop = new StopRequest();
    stop.request();
    return CommandRun.until(stop, words);
  }
}

package mainsgap.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.UncheckedIOException;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Syntax, errors and status of both instruments. Numbers and texts of the errors: SCPI-1999 volume
 * 2 chapter 21; bits of the registers: IEEE 488.2 chapter 11.
 */
class ScpiTest {
  private SimulatedBench bench;
  private ScpiClient digitizer;
  private ScpiClient scope;

  @BeforeEach
  void connect() {
    bench = SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
    digitizer = new ScpiClient(bench.port(SimulatedInstrument.DIGITIZER));
    scope = new ScpiClient(bench.port(SimulatedInstrument.TEN_FIELD_SCOPE));
  }

  @AfterEach
  void disconnect() {
    digitizer.close();
    scope.close();
    bench.close();
  }

  @Test
  void unknownHeaderIsSilentAndLeavesItsError() {
    assertTrue(digitizer.send(":FOO:BAR?").staysSilent());
    assertEquals("-113,\"Undefined header\"", digitizer.ask(":SYST:ERR?"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        ":SENS:SWE:POIN 500",
        "SENS:SWE:POIN 500",
        ":sense:sweep:points 500",
        ":SENSe1:SWEep:POINts 5E2",
        "  :SENS:SWE:POIN   500 \r",
        ":SENS:SWE:TINT 1E-3;POIN 500",
        ":SENS:SWE:TINT 1E-3;*CLS;POIN 500",
        "*CLS;:SENS:SWE:POIN 500"
      })
  void formsOfACommandMeanTheSame(String message) {
    digitizer.send(message);
    assertEquals("500", digitizer.ask(":SENS:SWE:POIN?"));
    assertEquals("0,\"No error\"", digitizer.ask("SYSTem:ERRor:NEXT?"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        ":SENSOR:SWE:POIN 500 | -113,\"Undefined header\"",
        ":SENS9:VOLT:RANG:PTP 5 | -114,\"Header suffix out of range\"",
        ":SENS:SWE:POIN many | -104,\"Data type error\"",
        ":SENS:SWE:POIN | -109,\"Missing parameter\"",
        ":SENS:SWE:POIN 5,6 | -108,\"Parameter not allowed\"",
        ":SENS:SWE:POIN 1E9 | -222,\"Data out of range\"",
        ":SENS:SWE:POIN NAN | -104,\"Data type error\"",
        ":SENS:SWE:POIN 5k | -104,\"Data type error\"",
        ":SENS:SWE:POIN -1E2 | -222,\"Data out of range\"",
        ":SENS1:FUNC \"XTIM:VOLT | -102,\"Syntax error\"",
        ":FORM ASC | -224,\"Illegal parameter value\"",
        ":TRIG:SOUR EXT | -224,\"Illegal parameter value\"",
        ":TRAC:DATA? CH1 | -230,\"Data corrupt or stale\"",
        ":TRAC:DATA? CH9 | -222,\"Data out of range\""
      })
  void mistakesLeaveTheirError(String message, String error) {
    digitizer.send("*CLS", message);
    assertEquals(error, digitizer.ask(":SYST:ERR?"));
    assertEquals("0,\"No error\"", digitizer.ask(":SYST:ERR?"));
  }

  @Test
  void startWhileSweepingIsIgnored() {
    digitizer.send(":SENS:SWE:POIN 1000000", ":SENS:SWE:TINT 1E-5", ":INIT", ":INIT");
    assertEquals("-213,\"Init ignored\"", digitizer.ask(":SYST:ERR?"));
    digitizer.send(":ABOR");
    assertEquals("0", digitizer.ask(":STAT:OPER:COND?"));
  }

  @Test
  void fullQueueEndsInItsOverflow() {
    for (int i = 0; i < 40; i++) {
      digitizer.send(":FOO");
    }
    String last = "";
    int count = 0;
    for (String error = digitizer.ask(":SYST:ERR?");
        !error.startsWith("0");
        error = digitizer.ask(":SYST:ERR?")) {
      last = error;
      count++;
    }
    assertEquals(16, count);
    assertEquals("-350,\"Queue overflow\"", last);
  }

  @Test
  void statusTellsOfErrors() {
    digitizer.send("*CLS", "*ESE 32", "*SRE 32");
    assertEquals("0", digitizer.ask("*STB?"));
    digitizer.send(":FOO");
    assertEquals(Integer.toString(4 + 32 + 64), digitizer.ask("*STB?"));
    assertEquals("32", digitizer.ask("*ESR?"));
    assertEquals("0", digitizer.ask("*ESR?"));
    digitizer.send("*OPC");
    assertEquals("1", digitizer.ask("*ESR?"));
    digitizer.send("*CLS");
    assertEquals("0", digitizer.ask("*STB?"));
    assertEquals("32", digitizer.ask("*ESE?"));
  }

  @Test
  void queriesOfOneMessageAnswerInOneLine() {
    assertEquals("1;1999.0", digitizer.ask("*OPC?;:SYST:VERS?"));
  }

  @Test
  void overlongMessageIsDroppedAndReported() {
    digitizer.send(" ".repeat(70_000) + "*CLS");
    assertEquals("-363,\"Input buffer overrun\"", digitizer.ask(":SYST:ERR?"));
  }

  @Test
  void clientsComeAndGo() {
    digitizer.send(":SENS:SWE:POIN 321");
    assertEquals("1", digitizer.ask("*OPC?"));
    digitizer.close();
    try (ScpiClient next = new ScpiClient(bench.port(SimulatedInstrument.DIGITIZER))) {
      assertEquals("321", next.ask(":SENS:SWE:POIN?"));
    }
  }

  @Test
  void serversListenOnLoopbackAlone() {
    assertTrue(bench.server(SimulatedInstrument.DIGITIZER).address().isLoopbackAddress());
    assertTrue(bench.server(SimulatedInstrument.TEN_FIELD_SCOPE).address().isLoopbackAddress());
    assertEquals(
        "TCPIP0::127.0.0.1::" + bench.port(SimulatedInstrument.DIGITIZER) + "::SOCKET",
        bench.resource(SimulatedInstrument.DIGITIZER));
  }

  @Test
  void closingEndsConnectionsAndThreads() throws InterruptedException {
    int port = bench.port(SimulatedInstrument.DIGITIZER);
    assertEquals("1", digitizer.ask("*OPC?"));
    assertEquals("1", scope.ask("*OPC?"));
    List<Thread> threads =
        Thread.getAllStackTraces().keySet().stream()
            .filter(thread -> thread.getName().startsWith("simulated-"))
            .toList();
    assertTrue(threads.stream().allMatch(Thread::isDaemon) && threads.size() >= 4);
    bench.close();
    assertEquals(-1, digitizer.read());
    assertThrows(UncheckedIOException.class, () -> new ScpiClient(port));
    for (Thread thread : threads) {
      thread.join(5000);
      assertFalse(thread.isAlive(), thread.getName());
    }
  }

  @Test
  void takenPortIsRefusedWithItsNumber() {
    SimulatedBenchSettings taken =
        SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7)
            .withPort(
                SimulatedInstrument.TEN_FIELD_SCOPE, bench.port(SimulatedInstrument.DIGITIZER));
    SimulationException refusal =
        assertThrows(SimulationException.class, () -> SimulatedBench.start(taken));
    assertTrue(
        String.valueOf(refusal.getMessage())
            .startsWith(
                "the simulated-scope cannot listen on 127.0.0.1 port "
                    + bench.port(SimulatedInstrument.DIGITIZER)));
  }

  @Test
  void wordsAndBytesOfARecordMeanTheSameVolts() {
    scope.send(
        ":CHAN1:PROB 100",
        ":CHAN1:SCAL 150",
        ":CHAN1:OFFS 60",
        ":TIM:SCAL 0.01",
        ":TIM:OFFS 0.05",
        ":ACQ:MDEP 5000",
        ":TRIG:MODE EDGE",
        ":TRIG:EDGE:LEV 9999",
        ":SING",
        ":TFOR");
    DialectsTest.await(scope, ":TRIG:STAT?", "STOP");
    scope.send(":WAV:FORM WORD", ":WAV:BYT LSBF", ":WAV:STAR 1", ":WAV:STOP 5000");
    assertEquals(
        "1,0,5000,1,2.000000000E-05,0.000000000E+00,0,2.929687500E-01,6.000000000E+01,2048",
        scope.ask(":WAV:PRE?"));
    byte[] words = scope.askBlock(":WAV:DATA?");
    scope.send(":WAV:FORM BYTE");
    byte[] bytes = scope.askBlock(":WAV:DATA?");
    for (int i = 0; i < 5000; i++) {
      double fine =
          ((words[2 * i] & 0xFF) + 256 * (words[2 * i + 1] & 0xFF) - 2048) * 1200 / 4096.0;
      double coarse = ((bytes[i] & 0xFF) - 128) * 1200 / 256.0;
      assertEquals(fine, coarse, 1200 / 256.0 / 2 + 1e-9);
    }
  }

  @Test
  void otherVariantOfThePreambleHasItsOriginInCodes() {
    SimulatedBenchSettings.Scope variant =
        new SimulatedBenchSettings.Scope(
            12, PreambleVariant.ORIGIN_IN_CODES, ScopeFault.NONE, Set.of());
    SimulatedBenchSettings settings =
        SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7).withScope(variant);
    try (SimulatedBench other = SimulatedBench.start(settings);
        ScpiClient client = new ScpiClient(other.port(SimulatedInstrument.TEN_FIELD_SCOPE))) {
      client.send(":CHAN1:PROB 100", ":CHAN1:SCAL 150", ":CHAN1:OFFS 75", ":TIM:SCAL 0.001");
      client.send(":TIM:OFFS 0.005", ":ACQ:MDEP 1000", ":TRIG:EDGE:LEV 9999", ":SING", ":TFOR");
      DialectsTest.await(client, ":TRIG:STAT?", "STOP");
      // (code - 128 + 16) * 4.6875 V: the middle code stands for 75 V
      assertEquals(
          List.of("4.687500000E+00", "-16", "128"),
          List.of(client.ask(":WAV:PRE?").split(",", -1)).subList(7, 10));
    }
  }

  @Test
  void chunkBeyondTheLimitConflicts() {
    scope.send(":TIM:SCAL 0.1", ":TIM:OFFS 0.5", ":ACQ:MDEP 300000", ":TRIG:EDGE:LEV 9999");
    scope.send(":SING", ":TFOR");
    DialectsTest.await(scope, ":TRIG:STAT?", "STOP");
    scope.send(":WAV:STAR 1", ":WAV:STOP 250001", ":WAV:DATA?");
    assertEquals("-221,\"Settings conflict\"", scope.ask(":SYST:ERR?"));
    scope.send(":WAV:STAR 250001", ":WAV:STOP 300000");
    assertEquals(50_000, scope.askBlock(":WAV:DATA?").length);
  }
}

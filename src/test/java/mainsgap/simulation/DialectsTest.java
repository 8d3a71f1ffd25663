package mainsgap.simulation;

import static java.util.Objects.requireNonNull;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import org.junit.jupiter.api.Test;

/** Conversations with both scopes over the wire, as a client would hold them. */
class DialectsTest {
  private static final SimulatedBenchSettings STANDBY =
      SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7);

  @Test
  void forcedRecordOfTheDigitizerHoldsTheGapWhereTheTruthSays() {
    try (SimulatedBench bench = SimulatedBench.start(STANDBY);
        ScpiClient client = new ScpiClient(bench.port(SimulatedInstrument.DIGITIZER))) {
      client.send(
          ":SENS1:FUNC \"XTIM:VOLT\"",
          ":SENS1:VOLT:RANG:PTP 12",
          ":SENS1:VOLT:RANG:OFFS 0",
          ":SENS:SWE:POIN 400000",
          ":SENS:SWE:TINT 1E-5",
          ":TRIG:SOUR IMM",
          ":FORM REAL,32",
          ":FORM:BORD NORM",
          ":INIT:CONT OFF",
          ":INIT");
      assertEquals("8", client.ask(":STAT:OPER:COND?"));
      bench.openMains();
      assertEquals("1", client.ask("*OPC?"));
      assertEquals("0", client.ask(":STAT:OPER:COND?"));
      assertEquals("400000", client.ask(":TRAC:POIN? CH1"));
      byte[] block = client.askBlock(":TRAC:DATA? CH1");
      assertEquals("0,\"No error\"", client.ask(":SYST:ERR?"));

      TrialTruth truth = bench.truth(1).orElseThrow();
      FloatBuffer volts = ByteBuffer.wrap(block).asFloatBuffer();
      double loss = truth.lastOpeningSeconds();
      double firstReturn = requireNonNull(truth.firstReturnSeconds());
      double back = requireNonNull(truth.returnSeconds());
      assertTrue(peakBetween(volts, loss + 1e-3, firstReturn) < 0.1, "the gap is quiet");
      assertTrue(peakBetween(volts, truth.lossSeconds() - 0.02, truth.lossSeconds()) > 2.9);
      assertTrue(peakBetween(volts, back, back + 0.02) > 2.9);
    }
  }

  private static double peakBetween(FloatBuffer volts, double fromSeconds, double toSeconds) {
    double peak = 0;
    for (int i = (int) Math.ceil(fromSeconds / 1e-5); i < toSeconds / 1e-5; i++) {
      peak = Math.max(peak, Math.abs(volts.get(i)));
    }
    return peak;
  }

  @Test
  void timeOutTriggerCatchesAnOutputThatStaysAway() {
    try (SimulatedBench bench =
            SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.NEVER_RETURNS, 3));
        ScpiClient client = new ScpiClient(bench.port(SimulatedInstrument.TEN_FIELD_SCOPE))) {
      armTimeOut(client);
      bench.openMains();
      await(client, ":TRIG:STAT?", "STOP");
      assertEquals(
          "0,0,20000,1,1.000000000E-05,-1.000000000E-01,0,4.687500000E+00,0.000000000E+00,128",
          client.ask(":WAV:PRE?"));
      TrialTruth truth = bench.truth(1).orElseThrow();
      // the last crossing lies up to (180 + 2 asin(98/325))/360 of a period before the opening
      double opening = truth.lastOpeningSeconds();
      assertTrue(opening < -0.0009 && opening > -0.0132, "opening at " + opening);
      byte[] codes = client.askBlock(":WAV:DATA?");
      assertEquals(20000, codes.length);
    }
  }

  @Test
  void sameSeedSendsTheSameBytes() {
    assertArrayEquals(recordOf(11), recordOf(11));
  }

  private static byte[] recordOf(long seed) {
    try (SimulatedBench bench =
            SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.NEVER_RETURNS, seed));
        ScpiClient client = new ScpiClient(bench.port(SimulatedInstrument.TEN_FIELD_SCOPE))) {
      armTimeOut(client);
      bench.openMains();
      await(client, ":TRIG:STAT?", "STOP");
      return client.askBlock(":WAV:DATA?");
    }
  }

  static void armTimeOut(ScpiClient client) {
    client.send(
        ":STOP",
        ":CHAN1:PROB 100",
        ":CHAN1:SCAL 150",
        ":CHAN1:OFFS 0",
        ":TIM:SCAL 0.02",
        ":TIM:OFFS 0",
        ":ACQ:MDEP 20000",
        ":TRIG:MODE TIM",
        ":TRIG:TIM:SOUR CHAN1",
        ":TRIG:TIM:LEV 98",
        ":TRIG:TIM:WIDT 0.013",
        ":WAV:SOUR CHAN1",
        ":WAV:FORM BYTE",
        ":WAV:STAR 1",
        ":WAV:STOP 20000",
        ":SING");
    assertEquals("0,\"No error\"", client.ask(":SYST:ERR?"));
    await(client, ":TRIG:STAT?", "WAIT");
  }

  static void await(ScpiClient client, String query, String answer) {
    for (int i = 0; i < 100_000; i++) {
      if (client.ask(query).equals(answer)) {
        return;
      }
    }
    throw new AssertionError(query + " never answered " + answer);
  }
}

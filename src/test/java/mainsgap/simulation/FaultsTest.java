package mainsgap.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Each fault does what it says, over the wire. */
class FaultsTest {
  private SimulatedBench bench;
  private ScpiClient scope;
  private ScpiClient digitizer;

  @BeforeEach
  void connect() {
    bench = SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.NEVER_RETURNS, 3));
    scope = new ScpiClient(bench.port(SimulatedInstrument.TEN_FIELD_SCOPE));
    digitizer = new ScpiClient(bench.port(SimulatedInstrument.DIGITIZER));
  }

  @AfterEach
  void disconnect() {
    scope.close();
    digitizer.close();
    bench.close();
  }

  private void recordOfDigitizer() {
    digitizer.send(":SENS:SWE:POIN 1000", ":SENS:SWE:TINT 1E-5", ":INIT");
    assertEquals("1", digitizer.ask("*OPC?"));
  }

  @Test
  void scopeThatNeverTriggersWaitsForEver() {
    bench.setFault(ScopeFault.NEVER_TRIGGERS);
    DialectsTest.armTimeOut(scope);
    bench.openMains();
    assertEquals("WAIT", scope.ask(":TRIG:STAT?"));
    assertTrue(bench.lastTruth().isEmpty());
    digitizer.send(":SENS:SWE:POIN 100000", ":SENS:SWE:TINT 1E-5", ":INIT");
    assertEquals("32", digitizer.ask(":STAT:OPER:COND?"));
  }

  @Test
  void connectionClosesInTheMiddleOfABlock() {
    recordOfDigitizer();
    bench.setFault(ScopeFault.CLOSES_IN_MID_BLOCK);
    digitizer.send(":TRAC:DATA? CH1");
    assertEquals(4000, digitizer.readBlockHeader());
    assertEquals(2000, digitizer.readUpTo(4000).length);
  }

  @Test
  void blockStallsInItsMiddle() {
    recordOfDigitizer();
    bench.setFault(ScopeFault.STALLS_IN_MID_BLOCK);
    digitizer.send(":TRAC:DATA? CH1");
    assertEquals(4000, digitizer.readBlockHeader());
    assertEquals(2000, digitizer.readUpTo(2000).length);
    assertTrue(digitizer.staysSilent());
  }

  @Test
  void shortBlockIsWellFormedAndHalf() {
    recordOfDigitizer();
    bench.setFault(ScopeFault.SHORT_BLOCK);
    assertEquals(2000, digitizer.askBlock(":TRAC:DATA? CH1").length);
  }

  @Test
  void numbersComeAsAWordAndStatesDoNot() {
    bench.setFault(ScopeFault.TEXT_FOR_NUMBER);
    assertEquals("nonsense", digitizer.ask(":SENS:SWE:TINT?"));
    assertEquals("nonsense", scope.ask(":ACQ:SRAT?"));
    assertEquals("STOP", scope.ask(":TRIG:STAT?"));
    assertEquals("0", digitizer.ask(":STAT:OPER:COND?"));
    assertEquals("1", digitizer.ask("*OPC?"));
  }

  @Test
  void silentScopeTakesMessagesAndAnswersNone() {
    bench.setFault(ScopeFault.SILENT);
    assertTrue(scope.send("*IDN?").staysSilent());
  }

  @Test
  void startIsRefusedWithAnError() {
    bench.setFault(ScopeFault.ANSWERS_WITH_ERROR);
    digitizer.send(":INIT");
    assertEquals("-221,\"Settings conflict\"", digitizer.ask(":SYST:ERR?"));
    assertEquals("0", digitizer.ask(":STAT:OPER:COND?"));
    scope.send(":SING");
    assertEquals("-221,\"Settings conflict\"", scope.ask(":SYST:ERR?"));
    assertEquals("STOP", scope.ask(":TRIG:STAT?"));
  }

  @Test
  void rangeIsAQuarterOfTheOneAskedFor() {
    bench.setFault(ScopeFault.CLIPPING_RANGE);
    digitizer.send(":SENS1:VOLT:RANG:PTP 10");
    assertEquals(2.5, Double.parseDouble(digitizer.ask(":SENS1:VOLT:RANG:PTP?")));
    scope.send(":CHAN1:PROB 100", ":CHAN1:SCAL 150");
    assertEquals(37.5, Double.parseDouble(scope.ask(":CHAN1:SCAL?")));
  }

  @Test
  void mendedScopeAnswersAgain() {
    bench.setFault(ScopeFault.SILENT);
    assertTrue(scope.send("*IDN?").staysSilent());
    bench.setFault(ScopeFault.NONE);
    assertEquals("Mainsgap,Simulated scope,SIM3,1.0", scope.ask("*IDN?"));
  }
}

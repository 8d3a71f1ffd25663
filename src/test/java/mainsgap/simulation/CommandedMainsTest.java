package mainsgap.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HexFormat;
import mainsgap.link.ResourceName;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The AC source and the relay board move the mains of the bench, and fail as they are told. */
class CommandedMainsTest {
  private final SimulatedBench bench =
      SimulatedBench.start(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
  private final ScpiClient source =
      new ScpiClient(((ResourceName.TcpSocket) ResourceName.parse(bench.sourceResource())).port());

  @AfterEach
  void close() {
    source.close();
    bench.close();
  }

  /** SCPI-1999 Vol. 2, 15: OUTPut[:STATe] takes a boolean and is queried as 0 or 1. */
  @Test
  void sourceSwitchesByTheOutputSubsystem() {
    assertEquals("1", source.ask(":OUTPUT:STATE?"));
    assertEquals("0", source.send("OUTP OFF").ask("OUTP?"));
    assertFalse(bench.isMainsClosed());
    assertEquals("1", source.send(":OUTP:STAT 1").ask(":OUTP:STAT?"));
    assertTrue(bench.isMainsClosed());
    assertEquals("0", source.send("*RST").ask(":OUTP?"));
  }

  @Test
  void faultySourceRefusesOrTakesAndMovesNothing() {
    bench.setFault(SwitchFault.ANSWERS_WITH_ERROR);
    assertTrue(source.send(":OUTP OFF").ask(":SYST:ERR?").startsWith("-221"));
    bench.setFault(SwitchFault.STUCK);
    assertEquals("1", source.send(":OUTP OFF").ask(":OUTP?"));
    assertTrue(source.ask(":SYST:ERR?").startsWith("0"));
    assertTrue(bench.isMainsClosed());
  }

  @Test
  void relayBoardAnswersItsFramesAndRefusesOthers() throws IOException {
    PowerSide power = new PowerSide(SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
    CommandedMains mains = new CommandedMains(power);
    byte[] frames = {0x5A, 0, (byte) 0xA5, 0x5A, 2, (byte) 0xA5, 0x5A, 9, (byte) 0xA5, 1, 2, 3};
    ByteArrayOutputStream answers = new ByteArrayOutputStream();

    new RelayBoard(mains).with(new ByteArrayInputStream(frames), answers);

    assertFalse(power.isMainsClosed());
    assertEquals("06 5a 00 a5 15 15", HexFormat.ofDelimiter(" ").formatHex(answers.toByteArray()));
  }
}

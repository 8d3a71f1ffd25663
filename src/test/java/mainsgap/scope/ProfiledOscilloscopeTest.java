package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Map;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The driver against a scripted instrument that answers what a test wants. */
class ProfiledOscilloscopeTest {
  private static final int SAMPLES = 1000;
  private static final CapturePlan PLAN =
      new CapturePlan(
          CatchMethod.FORCED_RECORD,
          Map.of(ChannelRole.OUTPUT, new ChannelPlan(1, 100, 500, 325)),
          1e-4,
          SAMPLES,
          0,
          null,
          List.of());

  private LoopbackPeer peer;

  @BeforeEach
  void script() throws IOException {
    peer =
        new LoopbackPeer()
            .answer("*IDN?", "Invented Bench,Scope,1,1.0")
            .answer(":SYST:ERR?", "0,\"No error\"");
  }

  @AfterEach
  void end() throws IOException {
    peer.close();
  }

  @Test
  void settingsAreSentAsTheProfileWritesThem() {
    try (Oscilloscope scope = configured()) {
      List<String> received = peer.received();
      assertTrue(
          received.containsAll(
              List.of(
                  ":CHAN2:DISP OFF",
                  ":CHAN1:PROB 100",
                  ":CHAN1:SCAL 125",
                  ":TIM:SCAL 0.01",
                  ":TIM:OFFS 0.05",
                  ":ACQ:MDEP 1000",
                  ":TRIG:EDGE:LEV 475")),
          () -> scope.identity() + " received " + received);
    }
  }

  @Test
  void codesGetTheirScaleRailsAndTimes() {
    byte[] codes = new byte[2 * SAMPLES];
    ByteBuffer.wrap(codes)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort((short) 33_768)
        .putShort((short) 0xFFFF)
        .putShort((short) 1);
    peer.answer(":WAV:PRE?", "1,0,1000,1,1E-4,-0.02,0,0.02,0.5,32768")
        .answer(":WAV:DATA?", LoopbackPeer.bytes(LoopbackPeer.block(codes)));
    try (Oscilloscope scope = configured()) {
      Capture capture = scope.read();
      assertEquals(20.5, capture.output().voltsAt(0), 1e-9); // 1000 codes of 0.02 V, and 0.5 V
      assertTrue(capture.output().isClippedAt(1));
      assertFalse(capture.output().isClippedAt(2));
      assertEquals(-0.02, capture.time().firstSampleSeconds(), 1e-12);
      assertEquals(1e-4, capture.time().intervalSeconds(), 1e-15);
      assertEquals(25, capture.time().timeBasePpm());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.25 | 1000 | 1E4 | channel 1 range 1 V is below the 325 V supply peak: choose 490 V or more",
        "100 | 1000 | 1E4 | channel 1 range 400 V is below 1.5 times the 325 V supply peak: choose 490 V or more",
        "many | 1000 | 1E4 | reading back the range of channel 1: ",
        "125 | 5000 | 1E4 | the instrument made a record of 5000 samples of the 1000 that were planned",
        "9.9E37 | 1000 | 1E4 | the instrument says that the range of channel 1 is Infinity V, where",
        "125 | 0 | 1E4 | the instrument says that its record has 0.0 samples, where 1000 were set",
        "125 | 1000 | 0 | the instrument says that its sample interval is Infinity s",
        "125 | 1000 | 1E3 | the instrument samples every 1 ms instead of every 100 µs",
        "125 | 500 | 1E4 | the instrument made a record of 50 ms of the 100 ms that are needed",
      })
  void whatTheInstrumentMadeOfTheSettingsIsChecked(
      String scale, String depth, String rate, String sentence) {
    answerSettings(scale, depth, rate);
    try (Oscilloscope scope = open()) {
      assertSentence(sentence, () -> scope.configure(PLAN));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1,0,1000,1,1E-4,0,0,0.02,0,32768 | 1000 | the block from sample 1 on has 1000 bytes, expected 2 for each of 1000 samples",
        "1,0,1000,1,1E-4,0,0,0.02,0,32768 | 1998 | the block from sample 1 on has 1998 bytes",
        "1,0,1000,1,1E-4,0,0,0.02,0,32768 | 2002 | reading channel 1: ",
        "1,0,1001,1,1E-4,0,0,0.02,0,32768 | 2000 | the preamble claims 1001 points, but the record was set to 1000",
        "1,0,1000,1,2E-4,0,0,0.02,0,32768 | 2000 | the record has a sample every 200 µs, but the instrument was set to one every 100 µs",
        "1,0,1000,1,1E-4,0,0,0.02,0 | 2000 | the preamble has 9 fields, expected 10",
        "1,0,1000,1,x,0,0,0.02,0,32768 | 2000 | reading channel 1: ",
      })
  void aRecordThatDoesNotFitItsPreambleIsRefused(String preamble, int bytes, String sentence) {
    peer.answer(":WAV:PRE?", preamble)
        .answer(":WAV:DATA?", LoopbackPeer.bytes(LoopbackPeer.block(new byte[bytes])));
    try (Oscilloscope scope = configured()) {
      assertSentence(sentence, scope::read);
    }
  }

  @Test
  void aWordThatTheProfileDoesNotKnowIsToldWithThoseThatItKnows() {
    peer.answer(":TRIG:STAT?", "AUTO");
    try (Oscilloscope scope = configured()) {
      scope.arm();
      assertSentence(
          "the instrument answered 'AUTO' to :TRIG:STAT?; its profile knows RUN, STOP, TD, WAIT",
          scope::state);
    }
  }

  @Test
  void stoppedAtOnceIsNotComplete() {
    peer.answer(":TRIG:STAT?", "STOP").answer(":TRIG:STAT?", "WAIT").answer(":TRIG:STAT?", "STOP");
    try (Oscilloscope scope = configured()) {
      scope.arm();
      assertEquals(AcquisitionState.IDLE, scope.state());
      assertEquals(AcquisitionState.WATCHING, scope.state());
      assertEquals(AcquisitionState.COMPLETE, scope.state());
      assertTrue(peer.received().contains(":TFOR"));
      assertFalse(peer.received().contains("*OPC?"), "it may block until the trigger comes");
    }
  }

  @Test
  void aComplaintNamesTheStep() {
    LoopbackPeer.Answer error =
        LoopbackPeer.bytes(LoopbackPeer.ascii("-222,\"Data out of range\"\n"));
    for (int step = 0; step < 4; step++) { // none while stopping and switching off
      peer.answer(":SYST:ERR?", "0,\"No error\"");
    }
    peer.answer(":SYST:ERR?", error).answer(":SYST:ERR?", "0,\"No error\"");
    answerSettings("125", "1000", "1E4");
    try (Oscilloscope scope = open()) {
      String sentence = sentenceOf(() -> scope.configure(PLAN));
      assertTrue(sentence.contains("-222 \"Data out of range\""), sentence);
      assertTrue(sentence.startsWith("setting channel 1: "), sentence);
    }
  }

  @Test
  void closingStopsTheAcquisition() {
    configured().close();
    assertEquals(":STOP", lastCommand());
  }

  private String lastCommand() {
    List<String> commands =
        peer.received().stream().filter(message -> !message.equals(":SYST:ERR?")).toList();
    return commands.get(commands.size() - 1);
  }

  private void answerSettings(String scale, String depth, String rate) {
    peer.answer(":CHAN1:SCAL?", scale).answer(":ACQ:MDEP?", depth).answer(":ACQ:SRAT?", rate);
  }

  private Oscilloscope configured() {
    answerSettings("125", "1000", "1E4");
    Oscilloscope scope = open();
    scope.configure(PLAN);
    return scope;
  }

  private Oscilloscope open() {
    return Oscilloscopes.open(
        ResourceName.parse(peer.resource()),
        InstrumentProfiles.load(ShippedProfilesTest.FOLDER),
        "ten-field-preamble",
        Clock.system(),
        new StopRequest());
  }

  private static void assertSentence(String part, Executable step) {
    String sentence = sentenceOf(step);
    assertTrue(sentence.contains(part), sentence);
  }

  private static String sentenceOf(Executable step) {
    return String.valueOf(assertThrows(ScopeException.class, step).getMessage());
  }
}

package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Waveforms whose bytes are written out by hand, from a scripted instrument. */
class ProfileFromAManualTest {
  /** Written with the README's recipe from a list of commands that no instrument has. */
  private static final String INVENTED =
      """
      format = 1
      about = "An invented instrument with commands of its own"

      [identification]
      idn-pattern = "invented bench,scope"

      [conventions]
      probe-factor-told = true

      [limits]
      channels = 2
      smallest-full-scale-peak-volts = 0.02
      largest-full-scale-peak-volts = 40
      shortest-interval-seconds = 1e-8
      longest-interval-seconds = 0.001
      smallest-record-samples = 500
      largest-record-samples = 500_000
      converter-bits = 14
      time-base-ppm = 50

      [commands]
      connect = [":HALT"]
      channel-on = [":VERT{channel}:ATT {probe-factor}", ":VERT{channel}:FS {peak-to-peak-volts}"]
      record = [
        ":HORI:LEN {samples}",
        ":HORI:RATE {sample-rate-hertz}",
        ":HORI:TRIG {pre-trigger-percent}",
      ]
      arm = [":START"]
      force = [":FIRE"]
      disarm = [":HALT"]

      [triggers.forced]
      commands = [":TRIG:EDGE {channel},{unreached-level-volts}"]

      [read-back]
      samples = { query = ":HORI:LEN?", gives = "samples" }

      [state]
      query = ":STAT?"
      words = { "0" = "idle", "1" = "filling", "2" = "watching", "3" = "recording" }

      [waveform]
      kind = "scale-values"
      data = ":TRAC:READ? {channel},{first},{last}"
      chunk-samples = 50_000
      byte-order = "msb-first"
      bytes-per-code = 2
      signed = true
      lowest-code = -8192
      highest-code = 8191

      [waveform.values]
      volts-per-code = { query = ":TRAC:GAIN? {channel}" }
      reference-code = { query = ":TRAC:ZERO? {channel}" }
      first-sample-seconds = { query = ":TRAC:T0?" }
      interval-seconds = { query = ":TRAC:RATE?", inverse = true }
      """;

  private final Path folder;
  private LoopbackPeer peer;

  ProfileFromAManualTest(@TempDir Path folder) {
    this.folder = folder;
  }

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
  void anInventedInstrumentIsSetAndRead() throws IOException {
    Files.writeString(folder.resolve("mine.toml"), INVENTED);
    ByteBuffer codes = ByteBuffer.allocate(6);
    codes.putShort((short) 8191).putShort((short) -100).putShort((short) 3);
    peer.answer(":HORI:LEN?", "3")
        .answer(":TRAC:GAIN? 1", "0.05")
        .answer(":TRAC:ZERO? 1", "3")
        .answer(":TRAC:T0?", "-0.001")
        .answer(":TRAC:RATE?", "10000")
        .answer(":TRAC:READ? 1,1,3", LoopbackPeer.bytes(LoopbackPeer.block(codes.array())));
    Capture capture = read("mine", 3);
    Waveform output = capture.output();
    assertTrue(output.isClippedAt(0));
    assertFalse(output.isClippedAt(1));
    assertEquals(-5.15, output.voltsAt(1), 1e-9); // 103 codes of 50 mV below the reference
    assertEquals(0, output.voltsAt(2), 1e-9);
    assertEquals(-0.001, capture.time().firstSampleSeconds(), 1e-12);
    assertEquals(1e-4, capture.time().intervalSeconds(), 1e-12);
    assertEquals(50, capture.time().timeBasePpm());
    assertTrue(peer.received().containsAll(List.of(":HORI:RATE 10000", ":HORI:TRIG 0")));
  }

  /** FORMat REAL,32 of SCPI-1999: 0, 1.5 and -0.25 in either byte order, by IEEE 754. */
  @ParameterizedTest
  @CsvSource({
    "lsb-first, 23323132000000000000C03F000080BE0A",
    "msb-first, 23323132000000003FC00000BE8000000A",
  })
  void realsOfEitherByteOrderAreVolts(String order, String wire) throws IOException {
    Waveform output = readVolts(order, wire, 3).output();
    assertEquals(0, output.voltsAt(0));
    assertEquals(1.5, output.voltsAt(1));
    assertEquals(-0.25, output.voltsAt(2));
  }

  /** SCPI-1999 Vol. 2 7.2.1.5: 9.91E37 is not a number; 0x7E951BEE is the float next to it. */
  @ParameterizedTest
  @CsvSource({
    "msb-first, 23323136000000003FC00000BE8000007E951BEE0A",
    "lsb-first, 23323136000000000000C03F000080BEEE1B957E0A",
  })
  void theNumberThatStandsForNoneIsNoVoltage(String order, String wire) {
    ScopeException refused = assertThrows(ScopeException.class, () -> readVolts(order, wire, 4));
    assertEquals(
        "channel 1 has no voltage in sample 4 of 4: the record has a hole or an overload; choose a"
            + " larger range and repeat",
        refused.getMessage());
  }

  private Capture readVolts(String order, String wire, int samples) throws IOException {
    String text = Files.readString(ShippedProfilesTest.FOLDER.resolve("values-in-volts.toml"));
    Files.writeString(
        folder.resolve("volts.toml"),
        text.replace("byte-order = \"lsb-first\"", "byte-order = \"" + order + "\""));
    peer.answer(":CHAN1:RANG?", "1000")
        .answer(":ACQ:POIN?", Integer.toString(samples))
        .answer(":ACQ:RES?", "1E-4")
        .answer(":CHAN1:DATA:XINC?", "1E-4")
        .answer(":CHAN1:DATA:XOR?", "0")
        .answer(":CHAN1:DATA? 1," + samples, LoopbackPeer.bytes(HexFormat.of().parseHex(wire)));
    return read("volts", samples);
  }

  private Capture read(String profile, int samples) {
    CapturePlan plan =
        new CapturePlan(
            CatchMethod.FORCED_RECORD,
            Map.of(ChannelRole.OUTPUT, new ChannelPlan(1, 100, 500, 325)),
            1e-4,
            samples,
            0,
            null,
            List.of());
    try (Oscilloscope scope =
        Oscilloscopes.open(
            ResourceName.parse(peer.resource()),
            InstrumentProfiles.load(folder),
            profile,
            Clock.system(),
            new StopRequest())) {
      scope.configure(plan);
      return scope.read();
    }
  }
}

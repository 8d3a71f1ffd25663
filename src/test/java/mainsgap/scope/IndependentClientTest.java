package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.simulation.Served;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A client of other authors, PyVISA with PyVISA-py (Debian's python3-pyvisa 1.11.3 and
 * python3-pyvisa-py 0.5.1), takes a whole capture from the simulated scope. Then our own driver
 * reads the same record, over our own link of the same kind, and both have the same samples.
 */
class IndependentClientTest {
  private static final Path SCRIPT = Path.of("test-fixtures/independent-clients/capture.py");

  /** Not the first python on the path, which may be another than the one of the packages. */
  private static final String PYTHON = "/usr/bin/python3";

  private static final int SAMPLES = 20_000;
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Path folder;

  IndependentClientTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @Test
  void overARawSocketBothReadTheSameSamples() throws Exception {
    check("raw socket", SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7));
  }

  @Test
  void overVxi11BothReadTheSameSamples() throws Exception {
    check("VXI-11", SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7).withPortmapper());
  }

  private void check(String link, SimulatedBenchSettings settings) throws Exception {
    assumeTrue(
        Files.isExecutable(Path.of(PYTHON)) && run(PYTHON, "-c", "import pyvisa, pyvisa_py") == 0,
        "not installed: python3-pyvisa and python3-pyvisa-py, which take the capture");
    try (SimulatedBench bench = SimulatedBench.start(settings)) {
      assumeTrue(
          !settings.portmapper() || bench.hasPortmapper(),
          "port 111 of 127.0.0.1 is taken, or only for root: PyVISA finds VXI-11 through it alone");
      String resource = resource(bench, link);
      assertEquals(
          0, run(PYTHON, SCRIPT.toString(), resource, folder.toString()), () -> said("output.txt"));
      for (int channel = 1; channel <= 2; channel++) {
        assertSameSamples(resource, channel);
      }
    }
  }

  private static String resource(SimulatedBench bench, String link) {
    return bench.served().stream()
        .filter(served -> served.instrument() == SimulatedInstrument.TEN_FIELD_SCOPE)
        .filter(served -> served.link().equals(link))
        .map(Served::resource)
        .findFirst()
        .orElseThrow();
  }

  private void assertSameSamples(String resource, int channel) throws IOException {
    List<String> preamble = List.of(said("channel-" + channel + ".preamble").split(","));
    try (ScpiInstrument instrument =
        ScpiInstrument.open(ResourceName.parse(resource), ScpiOptions.standard(), Clock.system())) {
      InstrumentProfile profile =
          InstrumentProfiles.load(ShippedProfilesTest.FOLDER).named("ten-field-preamble");
      WaveformReader reader =
          new WaveformReader(
              new Exchange(instrument), profile, new Pauses(Clock.system(), new StopRequest()));
      double interval = Double.parseDouble(preamble.get(4));
      double first = Double.parseDouble(preamble.get(5));
      reader.begin();
      WaveformReader.Reading reading =
          reader.read(
              new WaveformReader.Channel(channel, 100, 600),
              new AppliedRecord(interval, SAMPLES, first));
      byte[] codes = Files.readAllBytes(folder.resolve("channel-" + channel + ".codes"));
      assertEquals(2 * SAMPLES, codes.length);
      assertArrayEquals(codes, reading.waveform().block());
      double increment = Double.parseDouble(preamble.get(7));
      double origin = Double.parseDouble(preamble.get(8));
      double reference = Double.parseDouble(preamble.get(9));
      for (int i = 0; i < SAMPLES; i++) {
        int code = (codes[2 * i] & 0xFF) | ((codes[2 * i + 1] & 0xFF) << 8);
        assertEquals((code - reference) * increment + origin, reading.waveform().voltsAt(i), 1e-9);
      }
    }
  }

  private int run(String... command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("output.txt").toFile())
            .start();
    if (!process.waitFor(PATIENCE.toMillis(), TimeUnit.MILLISECONDS)) {
      process.destroyForcibly();
      return -1;
    }
    return process.exitValue();
  }

  private String said(String file) {
    try {
      return Files.readString(folder.resolve(file), StandardCharsets.UTF_8);
    } catch (IOException e) {
      return e.toString();
    }
  }
}

package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** {@code mvn -P benchmark test} says what a measurement takes; it judges nothing. */
class SpeedTest {
  private static final Logger LOG = LoggerFactory.getLogger(SpeedTest.class);
  private static final Path TABLE = Path.of("target", "speed.txt");

  @Tag("benchmark")
  @Test
  void timeAndMemoryOfAMeasurementAreTold() throws RunnerException, IOException {
    Collection<RunResult> results =
        new Runner(
                new OptionsBuilder()
                    .include(MeasureBenchmark.class.getName())
                    .addProfiler(GCProfiler.class)
                    .build())
            .run();

    String table =
        String.format("%10s %12s %14s %14s%n", "samples", "ms", "ns a sample", "bytes a sample")
            + results.stream().map(SpeedTest::row).collect(Collectors.joining());
    Files.writeString(TABLE, table, StandardCharsets.UTF_8);
    LOG.warn("\n{}", table);
    assertEquals(4, results.size());
  }

  private static String row(RunResult result) {
    int samples = Integer.parseInt(result.getParams().getParam("samples"));
    double millis = result.getPrimaryResult().getScore();
    double bytes = allocatedBytes(result).getScore();
    return String.format(
        Locale.ROOT,
        "%10d %12.2f %14.1f %14.1f%n",
        samples,
        millis,
        millis * 1e6 / samples,
        bytes / samples);
  }

  private static Result<?> allocatedBytes(RunResult result) {
    return Objects.requireNonNull(
        result.getSecondaryResults().get("gc.alloc.rate.norm"), "the profiler tells it");
  }
}

package mainsgap.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** {@code mvn -P benchmark test} says what a waveform's transfer takes; it judges nothing. */
class TransferSpeedTest {
  private static final Logger LOG = LoggerFactory.getLogger(TransferSpeedTest.class);
  private static final Path TABLE = Path.of("target", "transfer-speed.txt");

  @Tag("benchmark")
  @Test
  void theShareOfAPlainCopyIsTold() throws RunnerException, IOException {
    Collection<RunResult> results =
        new Runner(new OptionsBuilder().include(TransferBenchmark.class.getName()).build()).run();
    double plainMillis =
        results.stream()
            .filter(result -> way(result).equals(TransferBenchmark.Way.PLAIN_COPY.name()))
            .mapToDouble(TransferSpeedTest::millis)
            .findFirst()
            .orElseThrow();

    String table =
        String.format("%12s %10s %10s %16s%n", "way", "ms", "MB/s", "% of plain copy")
            + results.stream()
                .map(result -> row(result, plainMillis))
                .collect(Collectors.joining());
    Files.writeString(TABLE, table, StandardCharsets.UTF_8);
    LOG.warn("\n{}", table);
    assertEquals(TransferBenchmark.Way.values().length, results.size());
  }

  private static String row(RunResult result, double plainMillis) {
    double millis = millis(result);
    return String.format(
        Locale.ROOT,
        "%12s %10.2f %10.0f %16.0f%n",
        way(result),
        millis,
        TransferBenchmark.BYTES / 1e3 / millis,
        100 * plainMillis / millis);
  }

  private static String way(RunResult result) {
    return result.getParams().getParam("way");
  }

  private static double millis(RunResult result) {
    return result.getPrimaryResult().getScore();
  }
}

package mainsgap.transfer;

import java.util.concurrent.TimeUnit;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.bank.LongCapture;
import mainsgap.transfer.outcome.Outcome;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One measurement of a capture of each length, on a warm machine. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx2g")
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class MeasureBenchmark {
  /** The samples of the capture. */
  @Param({"10000", "100000", "1000000", "10000000"})
  int samples;

  private KnownCapture known = LongCapture.of(10_000);

  /** Generates the capture and sees that it can be measured. */
  @Setup
  public void record() {
    known = LongCapture.of(samples);
    if (measure().kind() != Outcome.Kind.MEASURED) {
      throw new IllegalStateException(measure().sentence());
    }
  }

  /** The measurement. */
  @Benchmark
  public Outcome measure() {
    return TransferMeasurement.measure(known.capture(), known.task());
  }
}

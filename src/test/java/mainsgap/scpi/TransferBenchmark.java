package mainsgap.scpi;

import static mainsgap.link.LoopbackPeer.block;

import java.io.IOException;
import java.time.Duration;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import mainsgap.link.HislipPeer;
import mainsgap.link.LinkPeer;
import mainsgap.link.LinkPeer.Manner;
import mainsgap.link.RawSocketPeer;
import mainsgap.link.Vxi11Peer;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** A waveform of 10 MB over loopback by each link, and a plain copy of the same bytes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 2, jvmArgsAppend = "-Xmx1g")
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 8, time = 1)
public class TransferBenchmark {
  /** The bytes of the waveform. */
  static final int BYTES = 10_000_000;

  /** The ways that are compared; to compare another link, add its peer. */
  public enum Way {
    /** A socket's stream read into an array. */
    PLAIN_COPY {
      @Override
      Transfer open(byte[] reply) throws IOException {
        return new PlainCopy(reply);
      }
    },
    /** The raw socket. */
    RAW_SOCKET {
      @Override
      Transfer open(byte[] reply) throws IOException {
        return new Query(new RawSocketPeer(), reply);
      }
    },
    /** HiSLIP in synchronized mode. */
    HISLIP {
      @Override
      Transfer open(byte[] reply) throws IOException {
        return new Query(new HislipPeer(), reply);
      }
    },
    /** VXI-11. */
    VXI_11 {
      @Override
      Transfer open(byte[] reply) throws IOException {
        return new Query(new Vxi11Peer(), reply);
      }
    };

    abstract Transfer open(byte[] reply) throws IOException;
  }

  /** Reads the waveform, again and again. */
  interface Transfer extends AutoCloseable {
    /** The waveform, in an array of its own. */
    byte[] read() throws IOException;

    @Override
    default void close() throws IOException {}
  }

  /** The way measured. */
  @Param Way way = Way.PLAIN_COPY;

  private Transfer transfer = () -> new byte[0];

  /** Connects. */
  @Setup
  public void open() throws IOException {
    byte[] waveform = new byte[BYTES];
    new Random(1).nextBytes(waveform);
    transfer = way.open(block(waveform));
  }

  /** Disconnects. */
  @TearDown
  public void close() throws IOException {
    transfer.close();
  }

  /** The transfer. */
  @Benchmark
  public byte[] transfer() throws IOException {
    return transfer.read();
  }

  /** A query for a block, as the program makes it. */
  private static final class Query implements Transfer {
    private final LinkPeer peer;
    private final ScpiInstrument instrument;

    Query(LinkPeer peer, byte[] reply) {
      this.peer = peer;
      peer.answer("WAV?", Manner.WHOLE, reply);
      this.instrument =
          new ScpiInstrument(
              peer.open(Deadline.after(Duration.ofSeconds(5), Clock.system())),
              ScpiOptions.standard(),
              Clock.system());
    }

    @Override
    public byte[] read() {
      return instrument.queryBlock("WAV?", BYTES);
    }

    @Override
    public void close() throws IOException {
      instrument.close();
      peer.close();
    }
  }
}

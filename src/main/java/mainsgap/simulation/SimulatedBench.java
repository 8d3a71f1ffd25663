package mainsgap.simulation;

import java.util.Optional;

/** A simulated bench. */
public final class SimulatedBench implements AutoCloseable {
  /** The probes of the bench divide by this; the SCPI-1999 digitizer tells volts behind them. */
  public static final double PROBE_FACTOR = 100;

  private final SimulatedBenchSettings settings;

  private SimulatedBench(SimulatedBenchSettings settings) {
    this.settings = settings;
  }

  /** Starts a bench. */
  public static SimulatedBench start(SimulatedBenchSettings settings) {
    return new SimulatedBench(settings);
  }

  /** What the bench was built of. */
  public SimulatedBenchSettings settings() {
    return settings;
  }

  /** The port of the SCPI-1999 digitizer. */
  public int strictPort() {
    return settings.ports().strict();
  }

  /** The port of the scope with the ten-field preamble. */
  public int tenFieldPort() {
    return settings.ports().tenField();
  }

  /** The resource name of the SCPI-1999 digitizer. */
  public String strictResource() {
    return resource(strictPort());
  }

  /** The resource name of the scope with the ten-field preamble. */
  public String tenFieldResource() {
    return resource(tenFieldPort());
  }

  /** The hand opens the mains switch; nothing happens where it is open. */
  public void openMains() {
    throw new UnsupportedOperationException("under construction");
  }

  /** The hand closes the mains switch; nothing happens where it is closed. */
  public void closeMains() {
    throw new UnsupportedOperationException("under construction");
  }

  /** Whether the mains switch is closed. */
  public boolean isMainsClosed() {
    return true;
  }

  /** Changes what the scope does wrong, from now on. */
  public void setFault(ScopeFault fault) {
    throw new UnsupportedOperationException("under construction " + fault);
  }

  /** The truth of the {@code number}-th opening, from 1; empty where no record caught it. */
  public Optional<TrialTruth> truth(int number) {
    throw new UnsupportedOperationException("under construction " + number);
  }

  /** The truth of the {@code number}-th closing, from 1; empty where no record caught it. */
  public Optional<TrialTruth> truthOfClosing(int number) {
    throw new UnsupportedOperationException("under construction " + number);
  }

  /** The truth of the newest event that a record caught. */
  public Optional<TrialTruth> lastTruth() {
    return Optional.empty();
  }

  /** Ends the servers and their connections. */
  @Override
  public void close() {}

  private static String resource(int port) {
    return "TCPIP::127.0.0.1::" + port + "::SOCKET";
  }
}

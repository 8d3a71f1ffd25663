package mainsgap.simulation;

import java.util.Optional;
import mainsgap.simulation.TrialTruth.Change;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * A simulated bench: a backup unit on the mains, a hand on the mains switch, and two scopes that
 * watch them, each answering on a TCP port of the loopback interface. Channel 1 is the output of
 * the unit, channel 2 the mains downstream of the switch. What happens follows from the settings
 * and the number of the opening or closing alone; the clock only says when. Safe for all threads.
 */
public final class SimulatedBench implements AutoCloseable {
  /** The probes of the bench divide by this; the SCPI-1999 digitizer tells volts behind them. */
  public static final double PROBE_FACTOR = 100;

  private final SimulatedBenchSettings settings;
  private final PowerSide power;
  private final FaultSwitch faults;
  private final StopRequest stop = new StopRequest();
  private final LoopbackServer strict;
  private final LoopbackServer tenField;

  private SimulatedBench(SimulatedBenchSettings settings, Clock clock) {
    this.settings = settings;
    this.power = new PowerSide(settings);
    this.faults = new FaultSwitch(settings.scope().fault());
    String serial = "SIM" + settings.seed();
    StrictDigitizer digitizer =
        new StrictDigitizer(new ScopeCore(power, clock, settings), faults, serial, clock, stop);
    TenFieldScope scope =
        new TenFieldScope(
            new ScopeCore(power, clock, settings), faults, serial, settings.scope().preamble());
    this.strict = serve(settings.ports().strict(), digitizer, "simulated-digitizer");
    try {
      this.tenField = serve(settings.ports().tenField(), scope, "simulated-scope");
    } catch (SimulationException e) {
      strict.close();
      throw e;
    }
  }

  /**
   * Sets the bench up, its mains closed.
   *
   * @throws SimulationException where a port cannot be listened on
   */
  public static SimulatedBench start(SimulatedBenchSettings settings) {
    return start(settings, Clock.system());
  }

  /** Sets the bench up on a clock of one's own. */
  static SimulatedBench start(SimulatedBenchSettings settings, Clock clock) {
    return new SimulatedBench(settings, clock);
  }

  private LoopbackServer serve(int port, Instrument.Dialect dialect, String name) {
    return LoopbackServer.start(port, new Instrument(dialect), faults, name);
  }

  /** What the bench was built of. */
  public SimulatedBenchSettings settings() {
    return settings;
  }

  /** The port of the SCPI-1999 digitizer. */
  public int strictPort() {
    return strict.port();
  }

  /** The port of the scope with the ten-field preamble. */
  public int tenFieldPort() {
    return tenField.port();
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
    power.openMains();
  }

  /** The hand closes the mains switch; nothing happens where it is closed. */
  public void closeMains() {
    power.closeMains();
  }

  /** Whether the mains switch is closed. */
  public boolean isMainsClosed() {
    return power.isMainsClosed();
  }

  /** Changes what the scopes do wrong, from now on. */
  public void setFault(ScopeFault fault) {
    faults.turnTo(fault);
  }

  /** The truth of the {@code number}-th opening, from 1; empty where no record caught it. */
  public Optional<TrialTruth> truth(int number) {
    return power.truth(Change.OPENING, number);
  }

  /** The truth of the {@code number}-th closing, from 1; empty where no record caught it. */
  public Optional<TrialTruth> truthOfClosing(int number) {
    return power.truth(Change.CLOSING, number);
  }

  /** The truth of the newest event that a record caught. */
  public Optional<TrialTruth> lastTruth() {
    return power.lastTruth();
  }

  /** Ends the servers and their connections. */
  @Override
  public void close() {
    stop.request();
    strict.close();
    tenField.close();
  }

  LoopbackServer strictServer() {
    return strict;
  }

  LoopbackServer tenFieldServer() {
    return tenField;
  }

  private static String resource(int port) {
    return "TCPIP::127.0.0.1::" + port + "::SOCKET";
  }
}

package mainsgap.simulation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import mainsgap.simulation.TrialTruth.Change;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * A simulated bench: a backup unit on the mains, a hand on the mains switch, and scopes that watch
 * them, each answering on ports of the loopback interface. Channel 1 is the output of the unit,
 * channel 2 the mains downstream of the switch, channel 3 an isolated mains-present signal, channel
 * 4 a contact of the unit that is closed while it is on mains. What happens follows from the
 * settings and the number of the opening or closing alone; the clock only says when. Safe for all
 * threads.
 */
public final class SimulatedBench implements AutoCloseable {
  /** The probes of the bench divide by this; the SCPI-1999 digitizer tells volts behind them. */
  public static final double PROBE_FACTOR = 100;

  /** Output and mains are seen through probes, the small signals directly. */
  static double probeFactor(int channel) {
    return channel <= 2 ? PROBE_FACTOR : 1;
  }

  private final SimulatedBenchSettings settings;
  private final PowerSide power;
  private final FaultSwitch faults;
  private final StopRequest stop = new StopRequest();
  private final Map<SimulatedInstrument, ScopeCore> cores =
      new EnumMap<>(SimulatedInstrument.class);
  private final Vxi11Host vxi11;
  private final Map<SimulatedInstrument, List<ScopeServer>> servers =
      new EnumMap<>(SimulatedInstrument.class);
  private final CommandedMains commandedMains;
  private final FaultSwitch sourceFaults = new FaultSwitch(ScopeFault.NONE, Set.of());
  private final List<ScopeServer> switches = new ArrayList<>();

  private SimulatedBench(SimulatedBenchSettings settings, Clock clock) {
    this.settings = settings;
    this.power = new PowerSide(settings);
    this.faults = new FaultSwitch(settings.scope().fault(), settings.scope().quirks());
    this.vxi11 = Vxi11Host.start(faults, Clock.system(), settings.portmapper());
    this.commandedMains = new CommandedMains(power);
    try {
      for (SimulatedInstrument kind : SimulatedInstrument.values()) {
        serve(kind, new Instrument(dialect(kind, clock), faults));
      }
      AcSource source = new AcSource(commandedMains, "SIM" + settings.seed());
      switches.add(
          LoopbackServer.start(
              0, new Instrument(source, sourceFaults), sourceFaults, "simulated-source"));
      switches.add(LoopbackServer.start(0, new RelayBoard(commandedMains), "simulated-relay"));
    } catch (SimulationException e) {
      close();
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

  private Instrument.Dialect dialect(SimulatedInstrument kind, Clock clock) {
    ScopeCore core = new ScopeCore(power, clock, settings);
    cores.put(kind, core);
    String serial = "SIM" + settings.seed();
    return switch (kind) {
      case DIGITIZER -> new StrictDigitizer(core, faults, serial, clock, stop);
      case TEN_FIELD_SCOPE -> new TenFieldScope(core, faults, serial, settings.scope().preamble());
      case NAMED_VALUE_SCOPE -> new NamedValueScope(core, faults, serial);
      case VOLTS_SCOPE -> new VoltsScope(core, faults, serial, clock, stop);
      case SINGLE_QUERY_SCOPE -> new SingleQueryScope(core, faults, serial, clock);
    };
  }

  /** Serves one instrument over every link, the raw socket first. */
  private void serve(SimulatedInstrument kind, Instrument instrument) {
    List<ScopeServer> opened = new ArrayList<>();
    servers.put(kind, opened);
    opened.add(LoopbackServer.start(settings.port(kind), instrument, faults, kind.label()));
    opened.add(HislipServer.start(0, instrument, faults, kind.label()));
    opened.add(vxi11.serve(instrument));
  }

  /** Whether a portmapper leads to the instruments, so that VXI-11 needs no port in their names. */
  public boolean hasPortmapper() {
    return vxi11.hasPortmapper();
  }

  /** What the bench was built of. */
  public SimulatedBenchSettings settings() {
    return settings;
  }

  /** All that can be reached, by instrument, its raw socket first. */
  public List<Served> served() {
    List<Served> all = new ArrayList<>();
    servers.forEach(
        (kind, opened) ->
            opened.forEach(server -> all.add(new Served(kind, server.link(), server.resource()))));
    return all;
  }

  /** The TCP port of an instrument's raw socket. */
  public int port(SimulatedInstrument instrument) {
    return server(instrument).port();
  }

  /** The resource name of an instrument's raw socket. */
  public String resource(SimulatedInstrument instrument) {
    return server(instrument).resource();
  }

  /** The resource name of the AC source whose output is the mains switch. */
  public String sourceResource() {
    return switches.get(0).resource();
  }

  /** The resource name of the relay that drives the contactor in the mains. */
  public String relayResource() {
    return switches.get(1).resource();
  }

  /** Changes what the commanded switches do wrong, from now on. */
  public void setFault(SwitchFault fault) {
    commandedMains.turnTo(fault);
    sourceFaults.turnTo(fault == SwitchFault.SILENT ? ScopeFault.SILENT : ScopeFault.NONE);
  }

  /** The links to the commanded switches die, for good; the mains stays as it is. */
  public void cutSwitchLinks() {
    switches.forEach(ScopeServer::close);
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
    switches.forEach(ScopeServer::close);
    servers.values().forEach(opened -> opened.forEach(ScopeServer::close));
    vxi11.close();
  }

  /** What an instrument has recorded. */
  ScopeCore core(SimulatedInstrument instrument) {
    return Objects.requireNonNull(cores.get(instrument));
  }

  /** The raw socket's server. */
  ScopeServer server(SimulatedInstrument instrument) {
    return Objects.requireNonNull(servers.get(instrument)).get(0);
  }
}

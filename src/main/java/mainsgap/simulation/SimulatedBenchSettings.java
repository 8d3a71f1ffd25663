package mainsgap.simulation;

import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/**
 * What a simulated bench is built of. Start from {@link #of} and change what differs.
 *
 * @param unit the unit under test
 * @param seed fixes all that is random on the bench
 * @param mains nominal voltage and frequency
 * @param load what hangs on the output
 * @param autonomous whether the bench opens its mains by itself some time after each arming, and
 *     closes it again when the record is complete
 * @param scope the scope's converter, preamble and faults
 * @param ports TCP ports of the raw sockets on loopback; 0 or none lets the machine choose
 * @param portmapper whether to lead to VXI-11 by a portmapper, where port 111 can be had
 */
public record SimulatedBenchSettings(
    SimulatedUnit unit,
    long seed,
    Mains mains,
    SimulatedLoad load,
    boolean autonomous,
    Scope scope,
    Map<SimulatedInstrument, Integer> ports,
    boolean portmapper) {

  /**
   * Nominal values of the mains.
   *
   * @param volts RMS
   * @param hertz 45 to 65
   */
  public record Mains(double volts, double hertz) {
    /** Checks that the supply is one that the simulated units can follow. */
    public Mains {
      if (!(volts >= 10 && volts <= 1000)) {
        throw new IllegalArgumentException(
            "the simulated mains is " + volts + " V: choose 10 to 1000 V");
      }
      if (!(hertz >= 45 && hertz <= 65)) {
        throw new IllegalArgumentException(
            "the simulated mains is " + hertz + " Hz: choose 45 to 65 Hz");
      }
    }
  }

  /**
   * The scope.
   *
   * @param converterBits 8 to 12
   * @param preamble how the ten-field preamble means its y origin
   * @param fault what it does wrong
   * @param quirks what it does oddly
   */
  public record Scope(
      int converterBits, PreambleVariant preamble, ScopeFault fault, Set<ScopeQuirk> quirks) {
    /** Checks the converter. */
    public Scope {
      quirks = Set.copyOf(quirks);
      if (converterBits < 8 || converterBits > 12) {
        throw new IllegalArgumentException(
            "the simulated converter has " + converterBits + " bits: choose 8 to 12");
      }
    }
  }

  /** Checks the ports. */
  public SimulatedBenchSettings {
    ports = Map.copyOf(ports);
    ports
        .values()
        .forEach(
            port -> {
              if (port < 0 || port > 65535) {
                throw new IllegalArgumentException(port + " is no TCP port: choose 0 to 65535");
              }
            });
  }

  /** A bench on 230 V, 50 Hz with a resistive load, hand-switched, without faults. */
  public static SimulatedBenchSettings of(SimulatedUnit unit, long seed) {
    return new SimulatedBenchSettings(
        unit,
        seed,
        new Mains(230, 50),
        SimulatedLoad.RESISTIVE,
        false,
        new Scope(12, PreambleVariant.ORIGIN_IN_VOLTS, ScopeFault.NONE, Set.of()),
        Map.of(),
        false);
  }

  /** The same on another mains. */
  public SimulatedBenchSettings withMains(double volts, double hertz) {
    return new SimulatedBenchSettings(
        unit, seed, new Mains(volts, hertz), load, autonomous, scope, ports, portmapper);
  }

  /** The same with another load. */
  public SimulatedBenchSettings withLoad(SimulatedLoad other) {
    return new SimulatedBenchSettings(
        unit, seed, mains, other, autonomous, scope, ports, portmapper);
  }

  /** The same, opening its mains by itself. */
  public SimulatedBenchSettings withAutonomousMains() {
    return new SimulatedBenchSettings(unit, seed, mains, load, true, scope, ports, portmapper);
  }

  /** The same with another scope. */
  public SimulatedBenchSettings withScope(Scope other) {
    return new SimulatedBenchSettings(
        unit, seed, mains, load, autonomous, other, ports, portmapper);
  }

  /** The same with a scope that does something wrong. */
  public SimulatedBenchSettings withFault(ScopeFault fault) {
    return withScope(new Scope(scope.converterBits(), scope.preamble(), fault, scope.quirks()));
  }

  /** The same with a scope of odd ways. */
  public SimulatedBenchSettings withQuirks(Set<ScopeQuirk> quirks) {
    return withScope(new Scope(scope.converterBits(), scope.preamble(), scope.fault(), quirks));
  }

  /** The same, with one raw socket on a port of one's own choice. */
  public SimulatedBenchSettings withPort(SimulatedInstrument instrument, int port) {
    Map<SimulatedInstrument, Integer> more = new EnumMap<>(SimulatedInstrument.class);
    more.putAll(ports);
    more.put(instrument, port);
    return new SimulatedBenchSettings(unit, seed, mains, load, autonomous, scope, more, portmapper);
  }

  /** The same, with a portmapper where its port can be had. */
  public SimulatedBenchSettings withPortmapper() {
    return new SimulatedBenchSettings(unit, seed, mains, load, autonomous, scope, ports, true);
  }

  /** The port wanted for an instrument's raw socket; 0 for any. */
  int port(SimulatedInstrument instrument) {
    return ports.getOrDefault(instrument, 0);
  }
}

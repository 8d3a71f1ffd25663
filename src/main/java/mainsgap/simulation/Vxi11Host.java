package mainsgap.simulation;

import java.io.IOException;
import java.net.Socket;
import java.util.Optional;
import mainsgap.waiting.Clock;
import org.jspecify.annotations.Nullable;

/**
 * Serves the instruments of a bench by VXI-11, told apart by device names: a core and an abort
 * channel on free ports of the loopback interface and, where it is wanted and the port can be had,
 * a portmapper that leads to them.
 */
final class Vxi11Host implements AutoCloseable {
  static final int PORTMAPPER_PORT = 111;

  private static final int CORE_PROGRAM = 0x0607AF;
  private static final int ABORT_PROGRAM = 0x0607B0;
  private static final int PORTMAPPER_PROGRAM = 100_000;
  private static final int PORTMAPPER_VERSION = 2;
  private static final int VERSION = 1;
  private static final int DEVICE_ABORT = 1;
  private static final int GET_PORT = 3;
  private static final int TCP = 6;
  private static final int INVALID_LINK = 4;

  private final Vxi11Links links;
  private final LoopbackListener core;
  private final LoopbackListener abort;
  private final @Nullable LoopbackListener portmapper;
  private int devices;

  private Vxi11Host(FaultSwitch faults, Clock clock, boolean portmapperWanted) {
    links = new Vxi11Links(faults, clock);
    core = LoopbackListener.start(0, this::serveCore, "simulated-vxi-11");
    abort =
        listen(0, new RpcService(ABORT_PROGRAM, VERSION, this::abort), "simulated-vxi-11-abort");
    links.listensForAborts(abort.port());
    portmapper = portmapperWanted ? startPortmapper() : null;
  }

  /** Starts without instruments. */
  static Vxi11Host start(FaultSwitch faults, Clock clock, boolean portmapperWanted) {
    return new Vxi11Host(faults, clock, portmapperWanted);
  }

  /** Serves one more instrument; the first is inst0. */
  ScopeServer serve(Instrument instrument) {
    String name = "inst" + devices;
    devices++;
    links.add(name, instrument);
    return new Device(name);
  }

  boolean hasPortmapper() {
    return portmapper != null;
  }

  @Override
  public void close() {
    if (portmapper != null) {
      portmapper.close();
    }
    core.close();
    abort.close();
    links.removeAll();
  }

  private @Nullable LoopbackListener startPortmapper() {
    try {
      return listen(
          PORTMAPPER_PORT,
          new RpcService(PORTMAPPER_PROGRAM, PORTMAPPER_VERSION, this::portOf),
          "simulated-portmapper");
    } catch (SimulationException e) {
      return null; // it belongs to another program, or to root alone
    }
  }

  private static LoopbackListener listen(int port, RpcService service, String name) {
    return LoopbackListener.start(port, service::serve, name);
  }

  private void serveCore(Socket connection) throws IOException {
    Vxi11Client client = new Vxi11Client(links);
    try {
      new RpcService(CORE_PROGRAM, VERSION, client::answer).serve(connection);
    } finally {
      client.end();
    }
  }

  private Optional<RpcAnswer> abort(RpcCall call) throws IOException {
    if (call.procedure() != DEVICE_ABORT) {
      return Optional.empty();
    }
    Optional<Vxi11Device> device = links.device(call.number());
    device.ifPresent(Vxi11Device::abort);
    return Optional.of(RpcAnswer.numbers(call, device.isPresent() ? 0 : INVALID_LINK));
  }

  /** Port 0 for all that it does not know: RFC 1833, 3.2. */
  private Optional<RpcAnswer> portOf(RpcCall call) throws IOException {
    if (call.procedure() != GET_PORT) {
      return Optional.empty();
    }
    int program = call.number();
    boolean known = call.number() == VERSION && call.number() == TCP;
    int port = program == CORE_PROGRAM ? core.port() : program == ABORT_PROGRAM ? abort.port() : 0;
    return Optional.of(RpcAnswer.numbers(call, known ? port : 0));
  }

  private final class Device implements ScopeServer {
    private final String name;

    Device(String name) {
      this.name = name;
    }

    @Override
    public String link() {
      return "VXI-11";
    }

    @Override
    public String resource() {
      String port = hasPortmapper() ? "" : "," + core.port();
      return "TCPIP0::127.0.0.1::" + name + port + "::INSTR";
    }

    @Override
    public LoopbackListener listener() {
      return core;
    }

    /** Its host ends it. */
    @Override
    public void close() {}
  }
}

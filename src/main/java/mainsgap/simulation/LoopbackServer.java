package mainsgap.simulation;

/** Serves one instrument over a raw socket on the loopback interface, to several clients. */
final class LoopbackServer implements ScopeServer {
  private final LoopbackListener listener;

  private LoopbackServer(LoopbackListener listener) {
    this.listener = listener;
  }

  /** Listens on {@code port}, 0 for any that is free. */
  static LoopbackServer start(int port, Instrument instrument, FaultSwitch faults, String name) {
    LoopbackListener.Talk talk =
        client ->
            new ServedClient(instrument, faults, client.getInputStream(), client.getOutputStream())
                .run();
    return start(port, talk, name);
  }

  /** The same with a talk of one's own. */
  static LoopbackServer start(int port, LoopbackListener.Talk talk, String name) {
    return new LoopbackServer(LoopbackListener.start(port, talk, name));
  }

  @Override
  public String link() {
    return "raw socket";
  }

  @Override
  public String resource() {
    return "TCPIP0::127.0.0.1::" + port() + "::SOCKET";
  }

  @Override
  public LoopbackListener listener() {
    return listener;
  }
}

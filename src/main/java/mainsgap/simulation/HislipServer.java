package mainsgap.simulation;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import mainsgap.link.HislipFault;
import mainsgap.link.HislipType;
import mainsgap.simulation.HislipWire.Message;

/**
 * Serves one instrument by HiSLIP (IVI-6.1, version 1.0) on the loopback interface, to several
 * clients. It knows messages, status, device clear and message sizes, but no locks. It begins in
 * synchronized mode and goes over to the mode that a device clear asks for.
 */
final class HislipServer implements ScopeServer {
  private static final int VERSION_1_0 = 0x0100;

  private final Instrument instrument;
  private final FaultSwitch faults;
  private final Map<Integer, HislipTalk> sessions = new ConcurrentHashMap<>();
  private final AtomicInteger newestSession = new AtomicInteger();
  private final LoopbackListener listener;

  private HislipServer(int port, Instrument instrument, FaultSwitch faults, String name) {
    this.instrument = instrument;
    this.faults = faults;
    this.listener = LoopbackListener.start(port, this::serve, name + "-hislip");
  }

  /** Listens on {@code port}, 0 for any that is free. */
  static HislipServer start(int port, Instrument instrument, FaultSwitch faults, String name) {
    return new HislipServer(port, instrument, faults, name);
  }

  @Override
  public String link() {
    return "HiSLIP";
  }

  @Override
  public String resource() {
    return "TCPIP0::127.0.0.1::hislip0," + port() + "::INSTR";
  }

  @Override
  public LoopbackListener listener() {
    return listener;
  }

  /** The first message on a connection says which of the two of a session it is. */
  private void serve(Socket connection) throws IOException {
    InputStream in = new BufferedInputStream(connection.getInputStream());
    HislipWire wire = new HislipWire(in, connection.getOutputStream());
    Message first = wire.next();
    if (first.header().is(HislipType.INITIALIZE)) {
      serveSynchronous(wire, connection);
    } else if (first.header().is(HislipType.ASYNC_INITIALIZE)) {
      HislipTalk talk = sessions.get(first.header().parameter());
      if (talk == null) {
        wire.tell(HislipFault.POOR_INITIALIZATION);
        return;
      }
      talk.answerAsynchronous(wire, connection);
    } else {
      wire.tell(HislipFault.NOT_BOTH_CHANNELS);
    }
  }

  private void serveSynchronous(HislipWire wire, Socket connection) throws IOException {
    int session = newestSession.incrementAndGet() & 0xFFFF;
    HislipTalk talk = new HislipTalk(instrument, faults, wire, connection);
    sessions.put(session, talk);
    try {
      wire.send(HislipType.INITIALIZE_RESPONSE, 0, VERSION_1_0 << 16 | session);
      talk.answerSynchronous();
    } finally {
      sessions.remove(session);
      talk.end();
    }
  }
}

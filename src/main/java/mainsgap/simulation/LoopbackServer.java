package mainsgap.simulation;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Serves one instrument over a raw socket, on one TCP port of the loopback interface, to several
 * clients at a time. One named daemon thread accepts, one more talks to each client; {@link #close}
 * ends them.
 */
final class LoopbackServer implements ScopeServer {
  private static final Logger LOG = LoggerFactory.getLogger(LoopbackServer.class);
  private static final int MOST_CLIENTS = 16;
  private static final Duration ACCEPTOR_END = Duration.ofSeconds(2);

  private final ServerSocket listener;
  private final Instrument instrument;
  private final FaultSwitch faults;
  private final String name;
  private final Set<Socket> clients = ConcurrentHashMap.newKeySet();
  private final Thread acceptor;

  private LoopbackServer(
      ServerSocket listener, Instrument instrument, FaultSwitch faults, String name) {
    this.listener = listener;
    this.instrument = instrument;
    this.faults = faults;
    this.name = name;
    this.acceptor = daemon(this::acceptClients, name + "-accept");
  }

  /** Listens on {@code port}, 0 for any that is free. */
  static LoopbackServer start(int port, Instrument instrument, FaultSwitch faults, String name) {
    ServerSocket listener = listenOn(port, name);
    LoopbackServer server = new LoopbackServer(listener, instrument, faults, name);
    server.acceptor.start();
    return server;
  }

  private static ServerSocket listenOn(int port, String name) {
    try {
      ServerSocket listener = new ServerSocket();
      try {
        InetAddress loopback = InetAddress.getByAddress("localhost", new byte[] {127, 0, 0, 1});
        listener.bind(new InetSocketAddress(loopback, port));
        return listener;
      } catch (IOException e) {
        listener.close();
        throw e;
      }
    } catch (IOException e) {
      throw new SimulationException(
          "the " + name + " cannot listen on 127.0.0.1 port " + port + ": " + e.getMessage(), e);
    }
  }

  @Override
  public String link() {
    return "raw socket";
  }

  @Override
  public String resource() {
    return "TCPIP::127.0.0.1::" + port() + "::SOCKET";
  }

  @Override
  public int port() {
    return listener.getLocalPort();
  }

  @Override
  public InetAddress address() {
    return listener.getInetAddress();
  }

  private void acceptClients() {
    while (!listener.isClosed()) {
      try {
        Socket client = listener.accept();
        if (clients.size() >= MOST_CLIENTS) {
          client.close();
          continue;
        }
        clients.add(client);
        daemon(() -> serve(client), name + "-client-" + client.getPort()).start();
      } catch (IOException e) {
        if (!listener.isClosed()) {
          LOG.warn("{} could not accept a client", name, e);
        }
      }
    }
  }

  private void serve(Socket client) {
    try (client) {
      client.setTcpNoDelay(true);
      new ServedClient(instrument, faults, client.getInputStream(), client.getOutputStream()).run();
    } catch (IOException e) {
      LOG.debug("{} lost a client: {}", name, e.getMessage());
    } finally {
      clients.remove(client);
    }
  }

  @Override
  public void close() {
    closeQuietly(listener);
    awaitAcceptor();
    clients.forEach(this::closeQuietly);
  }

  /** The port is free, and no client can come any more, once the accepting thread has ended. */
  private void awaitAcceptor() {
    try {
      acceptor.join(ACCEPTOR_END.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void closeQuietly(AutoCloseable socket) {
    try {
      socket.close();
    } catch (Exception e) {
      LOG.debug("{} could not close a socket: {}", name, e.getMessage());
    }
  }

  private static Thread daemon(Runnable work, String threadName) {
    Thread thread = new Thread(work, threadName);
    thread.setDaemon(true);
    return thread;
  }
}

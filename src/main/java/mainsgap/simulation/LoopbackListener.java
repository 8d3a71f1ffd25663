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
 * Listens on one TCP port of the loopback interface, for several connections at a time. One named
 * daemon thread accepts, one more talks on each connection; {@link #close} ends them.
 */
final class LoopbackListener implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(LoopbackListener.class);
  private static final int MOST_CONNECTIONS = 32;
  private static final Duration ACCEPTOR_END = Duration.ofSeconds(2);

  private final ServerSocket listener;
  private final Talk talk;
  private final String name;
  private final Set<Socket> connections = ConcurrentHashMap.newKeySet();
  private final Thread acceptor;

  /** What is said on one connection. */
  interface Talk {
    /** Talks until the other side goes; the connection is closed behind it. */
    void on(Socket connection) throws IOException;
  }

  private LoopbackListener(ServerSocket listener, Talk talk, String name) {
    this.listener = listener;
    this.talk = talk;
    this.name = name;
    this.acceptor = daemon(this::accept, name + "-accept");
  }

  /** Listens on {@code port}, 0 for any that is free. */
  static LoopbackListener start(int port, Talk talk, String name) {
    LoopbackListener started = new LoopbackListener(listenOn(port, name), talk, name);
    started.acceptor.start();
    return started;
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

  int port() {
    return listener.getLocalPort();
  }

  InetAddress address() {
    return listener.getInetAddress();
  }

  private void accept() {
    while (!listener.isClosed()) {
      try {
        Socket connection = listener.accept();
        if (connections.size() >= MOST_CONNECTIONS) {
          connection.close();
          continue;
        }
        connections.add(connection);
        daemon(() -> serve(connection), name + "-client-" + connection.getPort()).start();
      } catch (IOException e) {
        if (!listener.isClosed()) {
          LOG.warn("{} could not accept a connection", name, e);
        }
      }
    }
  }

  private void serve(Socket connection) {
    try (connection) {
      connection.setTcpNoDelay(true);
      talk.on(connection);
    } catch (IOException e) {
      LOG.debug("{} lost a connection: {}", name, e.getMessage());
    } finally {
      connections.remove(connection);
    }
  }

  @Override
  public void close() {
    closeQuietly(listener);
    awaitAcceptor();
    connections.forEach(this::closeQuietly);
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

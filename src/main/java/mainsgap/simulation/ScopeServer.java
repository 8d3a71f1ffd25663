package mainsgap.simulation;

import java.net.InetAddress;

/** Serves one instrument over one kind of link, on loopback only. */
interface ScopeServer extends AutoCloseable {

  /** The kind of link, in words for people. */
  String link();

  /** The resource name to open. */
  String resource();

  /** Where it listens. */
  LoopbackListener listener();

  /** The TCP port that it listens on. */
  default int port() {
    return listener().port();
  }

  /** The address that it listens on. */
  default InetAddress address() {
    return listener().address();
  }

  /** Ends the server and its connections; the port is free then. */
  @Override
  default void close() {
    listener().close();
  }
}

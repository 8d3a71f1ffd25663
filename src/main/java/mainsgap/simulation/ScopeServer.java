package mainsgap.simulation;

import java.net.InetAddress;

/** Serves one instrument over one kind of link, on loopback only. */
interface ScopeServer extends AutoCloseable {

  /** The kind of link, in words for people. */
  String link();

  /** The resource name to open. */
  String resource();

  /** The TCP port that it listens on. */
  int port();

  /** The address that it listens on. */
  InetAddress address();

  /** Ends the server and its connections; the port is free then. */
  @Override
  void close();
}

package mainsgap.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.nio.channels.UnsupportedAddressTypeException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import mainsgap.waiting.Deadline;

/** The way to a host by TCP: its addresses, and a connection to the first that takes one. */
final class TcpRoute {
  private TcpRoute() {}

  /**
   * Tries each address of a host in turn: a name may have an IPv6 one that nobody serves.
   *
   * @param resource whom the sentences name
   */
  static TcpConnection connect(ResourceName resource, String host, int port, Deadline deadline) {
    LinkException failed = null;
    for (InetAddress address : addressesOf(resource, host, deadline)) {
      try {
        return connect(resource, new InetSocketAddress(address, port), deadline);
      } catch (LinkException e) {
        if (failed != null) {
          e.addSuppressed(failed);
        }
        failed = e;
      }
    }
    throw failed == null ? new LinkException(resource + ": the host has no address") : failed;
  }

  private static TcpConnection connect(
      ResourceName resource, InetSocketAddress address, Deadline deadline) {
    try {
      TcpConnection connection = TcpConnection.start();
      try {
        if (!connection.connect(address, deadline)) {
          throw unanswered(resource);
        }
        return connection;
      } catch (IOException | RuntimeException e) {
        connection.close();
        throw e;
      }
    } catch (IOException | UnsupportedAddressTypeException e) {
      throw new LinkException(
          resource
              + " cannot be reached ("
              + e.getMessage()
              + "): check address and port, that control over the network is on, and that no other"
              + " program holds the instrument's only connection",
          e);
    }
  }

  /** The system's look-up knows no time limit: it gets a thread, which a slow one may outlive. */
  private static InetAddress[] addressesOf(ResourceName resource, String host, Deadline deadline) {
    CompletableFuture<InetAddress[]> answer = new CompletableFuture<>();
    Thread lookUp = new Thread(() -> lookUp(host, answer), "look-up-" + host);
    lookUp.setDaemon(true);
    lookUp.start();
    boolean interrupted = false;
    try {
      while (true) {
        try {
          return answer.get(deadline.remaining().toNanos(), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
          interrupted = true; // the instrument can still be made safe
        }
      }
    } catch (ExecutionException e) {
      throw new LinkException(
          resource
              + ": no host is known by the name '"
              + host
              + "': check the spelling, or give the instrument's IP address",
          e);
    } catch (TimeoutException e) {
      throw unanswered(resource);
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static void lookUp(String host, CompletableFuture<InetAddress[]> answer) {
    try {
      answer.complete(InetAddress.getAllByName(host));
    } catch (UnknownHostException | RuntimeException e) {
      answer.completeExceptionally(e);
    }
  }

  private static LinkTimeoutException unanswered(ResourceName resource) {
    return new LinkTimeoutException(
        resource
            + " did not answer in the time allowed for connecting:"
            + " is the instrument on, and is the address right?");
  }
}

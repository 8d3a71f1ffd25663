package mainsgap.link;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.SelectionKey;
import mainsgap.waiting.Deadline;

/**
 * The bytes of one connection to a resource, whatever they mean: every call ends by its deadline,
 * and every fault is a sentence that names the resource. One thread owns it; only {@link #close()}
 * may come from another.
 */
final class TcpStream {
  private final ResourceName resource;
  private final TcpConnection connection;
  private volatile boolean closed;

  private TcpStream(ResourceName resource, TcpConnection connection) {
    this.resource = resource;
    this.connection = connection;
  }

  /** Connects to {@code port} of {@code host}. */
  static TcpStream connect(ResourceName resource, String host, int port, Deadline deadline) {
    return new TcpStream(resource, TcpRoute.connect(resource, host, port, deadline));
  }

  /** Sends all of {@code from}. */
  void write(ByteBuffer from, Deadline deadline) {
    try {
      while (connection.write(from) >= 0 && from.hasRemaining()) {
        if (!connection.await(SelectionKey.OP_WRITE, deadline)) {
          throw new LinkTimeoutException(
              resource
                  + " takes no more data: it may be busy or hung; wait, or switch it off and on");
        }
      }
    } catch (IOException e) {
      throw lost(e);
    }
  }

  /** Waits for at least one byte, and takes what has come and fits. */
  int read(ByteBuffer into, Deadline deadline) {
    int bytes = readWhatCame(into);
    while (bytes == 0 && into.hasRemaining()) {
      if (!awaitBytes(deadline)) {
        throw new LinkTimeoutException(resource + " sent nothing in the time allowed");
      }
      bytes = readWhatCame(into);
    }
    return bytes;
  }

  /** Takes what has come and fits, without waiting; 0 where that is nothing. */
  int readWhatCame(ByteBuffer into) {
    try {
      int bytes = connection.read(into);
      if (bytes < 0) {
        throw closed
            ? closedHere()
            : new LinkClosedException(
                resource
                    + " closed the connection: another program may have taken it, or the instrument"
                    + " restarted; connect again");
      }
      return bytes;
    } catch (IOException e) {
      throw lost(e);
    }
  }

  /** Waits for a byte or the end of the connection; false where the deadline passed first. */
  boolean awaitBytes(Deadline deadline) {
    try {
      return connection.await(SelectionKey.OP_READ, deadline);
    } catch (IOException e) {
      throw lost(e);
    }
  }

  /**
   * Ends the connection because it is of no more use; what uses it later is told that it's lost.
   */
  void drop() {
    connection.close();
  }

  /** Says that the program has done with it: whatever ends it from now on is no fault. */
  void beginClose() {
    closed = true;
  }

  /** Ends the connection because the program has done with it. */
  void close() {
    beginClose();
    connection.close();
  }

  private LinkClosedException lost(IOException e) {
    if (closed) {
      return closedHere();
    }
    String how = e instanceof ClosedChannelException ? "not connected" : e.getMessage();
    return new LinkClosedException(
        resource + " lost the connection (" + how + "): check the cable and connect again", e);
  }

  private LinkClosedException closedHere() {
    return new LinkClosedException(resource + " was closed by this program");
  }
}

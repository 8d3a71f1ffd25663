package mainsgap.link;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.SelectionKey;
import java.util.OptionalInt;
import mainsgap.waiting.Deadline;

/** A raw TCP socket (IANA scpi-raw): no end mark, no device clear, no status byte. */
final class TcpLink implements Link {
  private final ResourceName.TcpSocket resource;
  private volatile TcpConnection connection;
  private volatile boolean closed;

  private TcpLink(ResourceName.TcpSocket resource, TcpConnection connection) {
    this.resource = resource;
    this.connection = connection;
  }

  static TcpLink open(ResourceName.TcpSocket resource, Deadline deadline) {
    return new TcpLink(resource, connect(resource, deadline));
  }

  @Override
  public ResourceName resource() {
    return resource;
  }

  @Override
  public void write(byte[] message, Deadline deadline) {
    ByteBuffer rest = ByteBuffer.wrap(message);
    TcpConnection current = connection;
    try {
      while (current.write(rest) >= 0 && rest.hasRemaining()) {
        if (!current.await(SelectionKey.OP_WRITE, deadline)) {
          throw new LinkTimeoutException(
              resource
                  + " takes no more data: it may be busy or hung; wait, or switch it off and on");
        }
      }
    } catch (IOException e) {
      throw lost(e);
    }
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    TcpConnection current = connection;
    try {
      int bytes = current.read(into);
      while (bytes == 0 && into.hasRemaining()) {
        if (!current.await(SelectionKey.OP_READ, deadline)) {
          throw new LinkTimeoutException(resource + " sent nothing in the time allowed");
        }
        bytes = current.read(into);
      }
      if (bytes < 0) {
        throw new LinkClosedException(
            resource
                + " closed the connection: another program may have taken it, or the instrument"
                + " restarted; connect again");
      }
      return new Received(bytes, false);
    } catch (IOException e) {
      throw lost(e);
    }
  }

  @Override
  public boolean marksMessageEnd() {
    return false;
  }

  @Override
  public OptionalInt statusByte(Deadline deadline) {
    return OptionalInt.empty();
  }

  @Override
  public void clear(Deadline deadline) {
    connection.close();
    if (!closed) {
      connection = connect(resource, deadline);
    }
    if (closed) {
      connection.close();
      throw new LinkClosedException(resource + " was closed by this program");
    }
  }

  @Override
  public void close() {
    closed = true;
    connection.close();
  }

  private LinkClosedException lost(IOException e) {
    if (closed) {
      return new LinkClosedException(resource + " was closed by this program", e);
    }
    String how = e instanceof ClosedChannelException ? "not connected" : e.getMessage();
    return new LinkClosedException(
        resource + " lost the connection (" + how + "): check the cable and connect again", e);
  }

  private static TcpConnection connect(ResourceName.TcpSocket resource, Deadline deadline) {
    return TcpRoute.connect(resource, resource.host(), resource.port(), deadline);
  }
}

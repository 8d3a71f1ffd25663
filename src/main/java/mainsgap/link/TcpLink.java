package mainsgap.link;

import java.nio.ByteBuffer;
import java.util.OptionalInt;
import mainsgap.waiting.Deadline;

/** A raw TCP socket (IANA scpi-raw): no end mark, no device clear, no status byte. */
final class TcpLink implements Link {
  private final ResourceName.TcpSocket resource;
  private volatile TcpStream stream;
  private volatile boolean closed;

  private TcpLink(ResourceName.TcpSocket resource, TcpStream stream) {
    this.resource = resource;
    this.stream = stream;
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
    stream.write(ByteBuffer.wrap(message), deadline);
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    return new Received(stream.read(into, deadline), false);
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
    stream.drop();
    if (!closed) {
      stream = connect(resource, deadline);
    }
    if (closed) {
      stream.close();
      throw new LinkClosedException(resource + " was closed by this program");
    }
  }

  @Override
  public void close() {
    closed = true;
    stream.close();
  }

  private static TcpStream connect(ResourceName.TcpSocket resource, Deadline deadline) {
    return TcpStream.connect(resource, resource.host(), resource.port(), deadline);
  }
}

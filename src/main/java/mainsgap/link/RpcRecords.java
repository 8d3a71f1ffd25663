package mainsgap.link;

import java.net.InetAddress;
import java.nio.ByteBuffer;
import mainsgap.waiting.Deadline;
import org.acplt.oncrpc.OncRpcException;
import org.acplt.oncrpc.XdrDecodingStream;

/**
 * XDR out of the records of one TCP connection (RFC 5531, 11): the fragments of a record are joined
 * as they come. What a peer says of lengths is only ever counted down, never allocated, and every
 * wait ends at the deadline. Where it passes, no byte is lost: the record can be read on, or
 * skipped.
 */
final class RpcRecords extends XdrDecodingStream {
  private static final int BUFFER_BYTES = 16 * 1024;
  private static final int LONGEST_PADDING_BYTES = 3;

  private final ResourceName resource;
  private final TcpStream stream;
  private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES).limit(0);
  private Deadline deadline;
  private int fragmentLeft;
  private boolean lastFragment = true;

  RpcRecords(ResourceName resource, TcpStream stream, Deadline deadline) {
    this.resource = resource;
    this.stream = stream;
    this.deadline = deadline;
  }

  /** Every wait from now on ends at {@code other}. */
  void waitUntil(Deadline other) {
    deadline = other;
  }

  /** Skips what is left of a record, and goes to the next one. */
  @Override
  public void beginDecoding() {
    while (!atEnd()) {
      skip(fragmentLeft);
    }
    nextFragment();
  }

  /** The record should hold no more than the padding of its last item, which some leave out. */
  @Override
  public void endDecoding() throws OncRpcException {
    int padding = 0;
    while (!atEnd()) {
      padding += fragmentLeft;
      if (padding > LONGEST_PADDING_BYTES) {
        throw new OncRpcException("a reply goes on behind its end");
      }
      skip(fragmentLeft);
    }
  }

  @Override
  public int xdrDecodeInt() throws OncRpcException {
    int value = 0;
    for (int i = 0; i < Integer.BYTES; i++) {
      requireInside();
      require(1);
      fragmentLeft--;
      value = (value << 8) | (buffer.get() & 0xFF);
    }
    return value;
  }

  /** The next bytes of an opaque, at least one, as many as have come and fit. */
  int decodeSome(ByteBuffer into, int most) throws OncRpcException {
    requireInside();
    int wanted = Math.min(Math.min(most, fragmentLeft), into.remaining());
    int bytes;
    if (buffer.hasRemaining()) {
      bytes = Math.min(wanted, buffer.remaining());
      into.put(buffer.slice().limit(bytes));
      buffer.position(buffer.position() + bytes);
    } else {
      bytes = receive(into, wanted);
    }
    fragmentLeft -= bytes;
    return bytes;
  }

  @Override
  public void xdrDecodeOpaque(byte[] opaque, int offset, int length) throws OncRpcException {
    ByteBuffer into = ByteBuffer.wrap(opaque, offset, length);
    while (into.hasRemaining()) {
      int unused = decodeSome(into, into.remaining());
    }
  }

  /** The library asks this way for as many bytes as the peer claims. */
  @Override
  public byte[] xdrDecodeOpaque(int length) throws OncRpcException {
    throw new OncRpcException("bytes that nobody planned for");
  }

  @Override
  public InetAddress getSenderAddress() {
    throw new UnsupportedOperationException("the link knows its peer");
  }

  @Override
  public int getSenderPort() {
    throw new UnsupportedOperationException("the link knows its peer");
  }

  private boolean atEnd() {
    while (fragmentLeft == 0 && !lastFragment) {
      nextFragment();
    }
    return fragmentLeft == 0;
  }

  private void nextFragment() {
    require(RpcMessages.MARK_BYTES);
    int mark = buffer.getInt();
    lastFragment = (mark & RpcMessages.LAST_FRAGMENT) != 0;
    fragmentLeft = mark & ~RpcMessages.LAST_FRAGMENT;
  }

  private void requireInside() throws OncRpcException {
    if (atEnd()) {
      throw new OncRpcException("a reply ends too early");
    }
  }

  private void skip(int bytes) {
    for (int left = bytes; left > 0; ) {
      require(1);
      int skipped = Math.min(left, buffer.remaining());
      buffer.position(buffer.position() + skipped);
      fragmentLeft -= skipped;
      left -= skipped;
    }
  }

  /** Has at least {@code bytes} in the buffer, which keeps what came where the time is over. */
  private void require(int bytes) {
    while (buffer.remaining() < bytes) {
      if (deadline.hasPassed()) {
        throw new LinkTimeoutException(resource + " is too slow");
      }
      buffer.compact();
      try {
        int unused = stream.read(buffer, deadline);
      } finally {
        buffer.flip();
      }
    }
  }

  private int receive(ByteBuffer into, int most) {
    int limit = into.limit();
    into.limit(into.position() + most);
    try {
      return stream.read(into, deadline);
    } finally {
      into.limit(limit);
    }
  }
}

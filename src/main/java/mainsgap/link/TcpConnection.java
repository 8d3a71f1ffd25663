package mainsgap.link;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.CancelledKeyException;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.ClosedSelectorException;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import mainsgap.waiting.Deadline;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One TCP connection whose connects, reads and writes all end. The channel is non-blocking for
 * that, and also because an interrupt then leaves it open: the instrument can still be made safe
 * over it.
 */
final class TcpConnection {
  private static final Logger LOG = LoggerFactory.getLogger(TcpConnection.class);

  private final SocketChannel channel;
  private final Selector selector;
  private final SelectionKey key;

  private TcpConnection(SocketChannel channel, Selector selector, SelectionKey key) {
    this.channel = channel;
    this.selector = selector;
    this.key = key;
  }

  static TcpConnection start() throws IOException {
    SocketChannel channel = SocketChannel.open();
    try {
      channel.configureBlocking(false);
      // a command and its query are two small segments: the second must not wait for the first
      channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
      // an armed scope is silent for minutes, and routers forget silent connections
      channel.setOption(StandardSocketOptions.SO_KEEPALIVE, true);
      Selector selector = Selector.open();
      return new TcpConnection(channel, selector, channel.register(selector, 0));
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  /** False where the deadline passed first. */
  boolean connect(InetSocketAddress address, Deadline deadline) throws IOException {
    boolean connected = channel.connect(address);
    while (!connected) {
      if (!await(SelectionKey.OP_CONNECT, deadline)) {
        return false;
      }
      connected = channel.finishConnect();
    }
    return true;
  }

  int write(ByteBuffer from) throws IOException {
    return channel.write(from);
  }

  int read(ByteBuffer into) throws IOException {
    return channel.read(into);
  }

  /** Waits until the channel is ready; false where the deadline passed first. */
  boolean await(int operation, Deadline deadline) throws IOException {
    boolean interrupted = false;
    try {
      key.interestOps(operation);
      while (true) {
        long millis = Math.max(1, deadline.remaining().plusNanos(999_999).toMillis());
        int ready = selector.select(millis);
        selector.selectedKeys().clear();
        if (ready > 0) {
          return true;
        }
        if (!channel.isOpen()) {
          throw new ClosedChannelException();
        }
        if (!Thread.interrupted()) {
          return false;
        }
        interrupted = true;
      }
    } catch (ClosedSelectorException | CancelledKeyException e) {
      throw new IOException("closed while waiting", e);
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  void close() {
    try {
      channel.close();
      selector.close();
    } catch (IOException e) {
      LOG.debug("closing a connection failed", e);
    }
  }
}

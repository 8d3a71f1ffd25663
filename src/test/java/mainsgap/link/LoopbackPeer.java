package mainsgap.link;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A scripted instrument on 127.0.0.1, one client at a time: it answers each line as the test says,
 * and meets a line that it has no answer for with silence. What it received can be asked for.
 */
public final class LoopbackPeer implements AutoCloseable {

  /** What the peer does with a line. */
  @FunctionalInterface
  public interface Answer {
    /** Writes to the client; throwing closes its connection. */
    void to(OutputStream client) throws IOException;
  }

  private final ServerSocket server;
  private final Map<String, Deque<Answer>> answers = new ConcurrentHashMap<>();
  private final List<String> received = new CopyOnWriteArrayList<>();
  private final Semaphore accepting = new Semaphore(1);
  private final AtomicInteger connections = new AtomicInteger();

  /** Starts to serve on a free port. */
  public LoopbackPeer() throws IOException {
    server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    Thread thread = new Thread(this::serve, "loopback-peer");
    thread.setDaemon(true);
    thread.start();
  }

  /** Answers {@code message} with a line. A second answer to the same message comes after it. */
  public LoopbackPeer answer(String message, String line) {
    return answer(message, bytes(ascii(line + "\n")));
  }

  /** Answers {@code message} as told; the last answer of a message is repeated for ever. */
  public LoopbackPeer answer(String message, Answer answer) {
    Deque<Answer> script = answers.computeIfAbsent(message, m -> new ArrayDeque<>());
    synchronized (script) {
      script.add(answer);
    }
    return this;
  }

  /** Writes at once. */
  public static Answer bytes(byte[] bytes) {
    return client -> client.write(bytes);
  }

  /** Writes each byte in a segment of its own. */
  public static Answer oneByOne(byte[] bytes) {
    return client -> {
      for (byte b : bytes) {
        client.write(b);
      }
    };
  }

  /** Writes, then closes the connection. */
  public static Answer bytesThenClose(byte[] bytes) {
    return client -> {
      client.write(bytes);
      throw new IOException("closed by the script");
    };
  }

  /** Says nothing. */
  public static Answer silence() {
    return client -> {};
  }

  /** The bytes of a text. */
  public static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** A definite block with its NL. */
  public static byte[] block(byte[] data) {
    String count = Integer.toString(data.length);
    byte[] header = ascii("#" + count.length() + count);
    byte[] whole = new byte[header.length + data.length + 1];
    System.arraycopy(header, 0, whole, 0, header.length);
    System.arraycopy(data, 0, whole, header.length, data.length);
    whole[whole.length - 1] = '\n';
    return whole;
  }

  /** Where it listens. */
  public int port() {
    return server.getLocalPort();
  }

  /** Its resource name. */
  public String resource() {
    return "TCPIP::127.0.0.1::" + port() + "::SOCKET";
  }

  /** The lines that came, over all connections. */
  public List<String> received() {
    return List.copyOf(received);
  }

  /** How many clients have connected. */
  public int connections() {
    return connections.get();
  }

  /** Stops to serve: no client is taken any more once this returns. */
  @Override
  public void close() throws IOException {
    server.close();
    accepting.acquireUninterruptibly();
    accepting.release();
  }

  private void serve() {
    while (!server.isClosed()) {
      try (Socket client = accept()) {
        client.setTcpNoDelay(true);
        connections.incrementAndGet();
        converse(new BufferedInputStream(client.getInputStream()), client.getOutputStream());
      } catch (IOException e) {
        // the client left, the script closed the connection, or the test is over
      }
    }
  }

  private Socket accept() throws IOException {
    accepting.acquireUninterruptibly();
    try {
      return server.accept();
    } finally {
      accepting.release();
    }
  }

  private void converse(InputStream from, OutputStream to) throws IOException {
    StringBuilder line = new StringBuilder();
    for (int b = from.read(); b >= 0; b = from.read()) {
      if (b != '\n') {
        line.append((char) b);
        continue;
      }
      String message = line.toString();
      line.setLength(0);
      received.add(message);
      next(message).to(to);
    }
  }

  private Answer next(String message) {
    Deque<Answer> script = answers.get(message);
    if (script == null) {
      return silence();
    }
    synchronized (script) {
      return script.size() > 1 ? script.remove() : script.element();
    }
  }
}

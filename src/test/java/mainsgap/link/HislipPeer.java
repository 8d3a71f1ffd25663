package mainsgap.link;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import mainsgap.waiting.Deadline;

/**
 * A HiSLIP server for tests, made from bytes alone so that it shares no code with the client. It
 * keeps the headers that came, as hexadecimal digits, and can be told to answer with any bytes.
 */
public final class HislipPeer implements LinkPeer {
  private static final int DATA = 6;
  private static final int DATA_END = 7;
  private static final HexFormat HEX = HexFormat.of();

  /** What the server does with a message. */
  @FunctionalInterface
  public interface Answer {
    /** Writes to the client; throwing closes both of its connections. */
    void to(Client client) throws IOException;
  }

  private final ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
  private final Map<String, Answer> answers = new ConcurrentHashMap<>();
  private final Map<Integer, Client> clients = new ConcurrentHashMap<>();
  private final List<String> received = new CopyOnWriteArrayList<>();
  private final AtomicInteger sessions = new AtomicInteger(0x1233);
  private volatile long mostBytes = 0x100000;
  private volatile boolean overlapped;
  private volatile Answer statusAnswer =
      client -> client.asynchronous("48531650000000000000000000000000");
  private volatile Answer clearAnswer =
      client -> client.asynchronous("48531700000000000000000000000000");
  private volatile String welcome = "";

  /** Starts to serve. */
  public HislipPeer() throws IOException {
    daemon(this::accept, "hislip-peer");
  }

  /** Prefers overlapped mode. */
  public HislipPeer overlapped() {
    overlapped = true;
    return this;
  }

  /** Takes messages of so many bytes. */
  public HislipPeer takingAtMost(long bytes) {
    mostBytes = bytes;
    return this;
  }

  /** Answers the status query otherwise than with 0x50. */
  public HislipPeer onStatusQuery(Answer answer) {
    statusAnswer = answer;
    return this;
  }

  /** Answers AsyncDeviceClear otherwise than with its acknowledgement. */
  public HislipPeer onClear(Answer answer) {
    clearAnswer = answer;
    return this;
  }

  /** Welcomes a client with other bytes than a version and a session number. */
  public HislipPeer welcoming(String hex) {
    welcome = hex;
    return this;
  }

  /** Answers a message as told. */
  public HislipPeer on(String message, Answer answer) {
    answers.put(message, answer);
    return this;
  }

  /** The headers that came, of both channels, but for those of the opening. */
  public List<String> received() {
    return List.copyOf(received);
  }

  /** Its resource name. */
  public ResourceName resource() {
    return ResourceName.parse("TCPIP::127.0.0.1::hislip0," + server.getLocalPort() + "::INSTR");
  }

  @Override
  public Set<Manner> manners() {
    return EnumSet.allOf(Manner.class);
  }

  @Override
  public Link open(Deadline connectBy) {
    return resource().open(connectBy);
  }

  @Override
  public void answer(String message, Manner manner, byte[] reply) {
    int half = reply.length / 2;
    on(
        message,
        switch (manner) {
          case WHOLE -> client -> client.reply(reply);
          case ONE_BYTE_AT_A_TIME -> client -> client.replyByteByByte(reply);
          case END_APART ->
              client -> {
                client.data(DATA, reply);
                client.data(DATA_END, new byte[0]);
              };
          case STALLS_HALFWAY -> client -> client.data(DATA, Arrays.copyOf(reply, half));
          case CLOSES_HALFWAY ->
              client -> {
                client.frame(DATA_END, client.lastId, reply.length);
                client.synchronous(Arrays.copyOf(reply, half));
                throw new IOException("closed by the script");
              };
          case WRONG_FRAME -> client -> client.synchronous(reply);
          case FRAME_CLAIMS_MORE ->
              client -> {
                client.frame(DATA_END, client.lastId, 1L << 40);
                client.synchronous(reply);
              };
        });
  }

  @Override
  public void close() throws IOException {
    server.close();
  }

  /** One client: both of its connections. */
  public static final class Client {
    private final OutputStream synchronous;
    private volatile OutputStream asynchronous = OutputStream.nullOutputStream();
    private volatile int lastId;

    private Client(OutputStream synchronous) {
      this.synchronous = synchronous;
    }

    /** Sends bytes as they are. */
    public void synchronous(String hex) throws IOException {
      synchronous(HEX.parseHex(hex));
    }

    /** Sends bytes as they are. */
    public void synchronous(byte[] bytes) throws IOException {
      synchronous.write(bytes);
    }

    /** Sends bytes as they are. */
    public void asynchronous(String hex) throws IOException {
      asynchronous.write(HEX.parseHex(hex));
    }

    /** The number of the newest message. */
    public int lastId() {
      return lastId;
    }

    /** A reply in pieces of at most a mebibyte. */
    void reply(byte[] reply) throws IOException {
      int at = 0;
      do {
        int length = Math.min(1 << 20, reply.length - at);
        frame(at + length == reply.length ? DATA_END : DATA, lastId, length);
        synchronous.write(reply, at, length);
        at += length;
      } while (at < reply.length);
    }

    void replyByteByByte(byte[] reply) throws IOException {
      ByteArrayOutputStream whole = new ByteArrayOutputStream();
      whole.write(HEX.parseHex(header(DATA_END, lastId, reply.length)));
      whole.write(reply);
      for (byte one : whole.toByteArray()) {
        synchronous.write(one);
      }
    }

    void data(int type, byte[] payload) throws IOException {
      frame(type, lastId, payload.length);
      synchronous(payload);
    }

    void frame(int type, int id, long payloadBytes) throws IOException {
      synchronous(header(type, id, payloadBytes));
    }
  }

  /** The hexadecimal digits of a header with control code 0. */
  static String header(int type, int parameter, long payloadBytes) {
    return String.format("4853%02x00%08x%016x", type, parameter, payloadBytes);
  }

  private void accept() {
    while (!server.isClosed()) {
      try {
        Socket socket = server.accept();
        socket.setTcpNoDelay(true);
        daemon(() -> serve(socket), "hislip-peer-client");
      } catch (IOException e) {
        return; // the test is over
      }
    }
  }

  private void serve(Socket socket) {
    try (socket) {
      DataInputStream in = new DataInputStream(socket.getInputStream());
      Message first = Message.from(in);
      Client client =
          first.type == 0
              ? opened(socket.getOutputStream())
              : joined(first.parameter & 0xFFFF, socket.getOutputStream());
      try {
        converse(in, client);
      } finally {
        client.synchronous.close();
        client.asynchronous.close();
      }
    } catch (IOException e) {
      // the client left, the script closed the connection, or the test is over
    }
  }

  private Client opened(OutputStream out) throws IOException {
    Client client = new Client(out);
    int session = sessions.incrementAndGet();
    clients.put(session, client);
    client.synchronous(
        welcome.isEmpty()
            ? String.format("485301%02x0100%04x%016x", overlapped ? 1 : 0, session, 0)
            : welcome);
    return client;
  }

  private Client joined(int session, OutputStream out) throws IOException {
    Client client = Objects.requireNonNull(clients.get(session), "a session that was opened");
    client.asynchronous = out;
    client.asynchronous("48531200000058580000000000000000");
    return client;
  }

  private void converse(DataInputStream in, Client client) throws IOException {
    ByteArrayOutputStream message = new ByteArrayOutputStream();
    while (true) {
      Message next = Message.from(in);
      if (next.type != 15) {
        received.add(next.hex);
      }
      switch (next.type) {
        case DATA, DATA_END -> {
          message.write(next.payload);
          client.lastId = next.parameter;
          if (next.type == DATA_END) {
            String text = message.toString(StandardCharsets.ISO_8859_1).strip();
            message.reset();
            answers.getOrDefault(text, silent -> {}).to(client);
          }
        }
        case 8 -> {
          message.reset();
          client.synchronous("48530900000000000000000000000000");
        }
        case 15 -> client.asynchronous(header(16, 0, 8) + String.format("%016x", mostBytes));
        case 19 -> clearAnswer.to(client);
        case 21 -> statusAnswer.to(client);
        default -> {
          // kept in received
        }
      }
    }
  }

  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Message(int type, int parameter, byte[] payload, String hex) {
    static Message from(DataInputStream in) throws IOException {
      byte[] header = in.readNBytes(16);
      if (header.length < 16) {
        throw new IOException("the client is gone");
      }
      ByteBuffer fields = ByteBuffer.wrap(header);
      byte[] payload = in.readNBytes((int) fields.getLong(8));
      return new Message(fields.get(2), fields.getInt(4), payload, HEX.formatHex(header));
    }
  }

  private static void daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }
}

package mainsgap.link;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import mainsgap.waiting.Deadline;

/**
 * A scripted VXI-11 instrument on 127.0.0.1, without a portmapper. It takes 1024 bytes a call, the
 * least that the standard allows, and leaves a read unanswered that it has no reply for.
 */
public final class Vxi11Peer implements LinkPeer {
  private static final int LINK_ID = 0xC9;
  private static final int LONGEST_PIECE = 1024;
  private static final int ABORT = 1;
  private static final int CREATE = 10;
  private static final int WRITE = 11;
  private static final int READ = 12;
  private static final int READ_STATUS = 13;
  private static final int CLEAR = 15;
  private static final int DESTROY = 23;
  private static final int END = 4;

  private final ServerSocket core;
  private final ServerSocket abort;
  private final Map<String, Reply> replies = new ConcurrentHashMap<>();
  private final List<Integer> called = new CopyOnWriteArrayList<>();

  @SuppressWarnings("ArrayRecordComponent") // carried to the wire, never compared
  private record Reply(Manner manner, byte[] bytes) {}

  /** Starts to serve. */
  public Vxi11Peer() throws IOException {
    core = listen();
    abort = listen();
  }

  private ServerSocket listen() throws IOException {
    ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    inThread(
        () -> {
          while (!server.isClosed()) {
            try {
              Socket client = server.accept();
              inThread(() -> serve(client));
            } catch (IOException e) {
              return; // the test is over
            }
          }
        });
    return server;
  }

  @Override
  public Set<Manner> manners() {
    return EnumSet.allOf(Manner.class);
  }

  @Override
  public Link open(Deadline connectBy) {
    return ResourceName.parse(resource()).open(connectBy);
  }

  /** Its resource name. */
  public String resource() {
    return "TCPIP::127.0.0.1::inst0," + core.getLocalPort();
  }

  @Override
  public void answer(String message, Manner manner, byte[] reply) {
    replies.put(message, new Reply(manner, reply));
  }

  /** The procedures that were called, by their numbers, in their order. */
  public List<Integer> called() {
    return List.copyOf(called);
  }

  @Override
  public void close() throws IOException {
    core.close();
    abort.close();
  }

  private void serve(Socket socket) {
    try (socket) {
      socket.setTcpNoDelay(true);
      new Client(socket).serve();
    } catch (IOException e) {
      // the client left, the script closed the connection, or the test is over
    }
  }

  private static void inThread(Runnable work) {
    Thread thread = new Thread(work, "vxi-11-peer");
    thread.setDaemon(true);
    thread.start();
  }

  private final class Client {
    private final DataInputStream in;
    private final OutputStream out;
    private final ByteArrayOutputStream message = new ByteArrayOutputStream();
    private Reply reply = new Reply(Manner.WHOLE, new byte[0]);
    private int sent;

    Client(Socket socket) throws IOException {
      in = new DataInputStream(socket.getInputStream());
      out = socket.getOutputStream();
    }

    void serve() throws IOException {
      while (true) {
        in.readInt(); // the mark: a call is one fragment
        int xid = in.readInt();
        in.skipNBytes(16); // call, version of RPC, program, its version
        int procedure = in.readInt();
        in.skipNBytes(16); // no credentials, no verifier
        called.add(procedure);
        answer(xid, procedure);
      }
    }

    private void answer(int xid, int procedure) throws IOException {
      switch (procedure) {
        case CREATE -> {
          in.skipNBytes(12);
          in.skipNBytes((in.readInt() + 3) & ~3);
          send(record(xid, 0, LINK_ID, abort.getLocalPort(), LONGEST_PIECE));
        }
        case WRITE -> send(record(xid, 0, write()));
        case READ -> {
          in.readInt();
          int asked = in.readInt();
          in.skipNBytes(16);
          read(xid, asked);
        }
        case READ_STATUS -> {
          in.skipNBytes(16);
          send(record(xid, 0, 0x50));
        }
        case CLEAR -> {
          in.skipNBytes(16);
          message.reset();
          reply = new Reply(Manner.WHOLE, new byte[0]);
          send(record(xid, 0));
        }
        case ABORT, DESTROY -> {
          in.readInt();
          send(record(xid, 0));
        }
        default -> throw new IOException("no procedure " + procedure);
      }
    }

    private int write() throws IOException {
      in.skipNBytes(12);
      int flags = in.readInt();
      int count = in.readInt();
      if (count > LONGEST_PIECE) {
        throw new IOException("a piece of " + count + " bytes");
      }
      message.write(in.readNBytes(count));
      in.skipNBytes(-count & 3);
      if ((flags & Vxi11Calls.FLAG_END) != 0) {
        String said = message.toString(StandardCharsets.ISO_8859_1).stripTrailing();
        message.reset();
        reply = replies.getOrDefault(said, new Reply(Manner.WHOLE, new byte[0]));
        sent = 0;
      }
      return count;
    }

    private void read(int xid, int asked) throws IOException {
      byte[] bytes = reply.bytes();
      if (bytes.length == 0) {
        return;
      }
      boolean whole = reply.manner() != Manner.STALLS_HALFWAY;
      int end = whole ? bytes.length : bytes.length / 2;
      boolean nothingLeft = sent == end;
      if (nothingLeft && reply.manner() != Manner.END_APART) {
        return;
      }
      if (reply.manner() == Manner.WHOLE) {
        sendPiece(xid, Math.min(bytes.length - sent, asked));
        return;
      }
      byte[] piece = Arrays.copyOfRange(bytes, sent, Math.min(end, sent + asked));
      sent += piece.length;
      boolean ends =
          reply.manner() == Manner.END_APART ? nothingLeft : whole && sent == bytes.length;
      byte[] record = opaque(xid, ends ? END : 0, piece, piece.length);
      switch (reply.manner()) {
        case END_APART, STALLS_HALFWAY -> send(record);
        case WHOLE -> throw new IllegalStateException("sent already");
        case ONE_BYTE_AT_A_TIME -> {
          for (byte b : record) {
            out.write(b);
          }
        }
        case CLOSES_HALFWAY -> {
          out.write(record, 0, record.length / 2);
          throw new IOException("closed by the script");
        }
        case WRONG_FRAME -> {
          record[11] = 0; // a call, where a reply should be
          send(record);
        }
        case FRAME_CLAIMS_MORE -> send(opaque(xid, END, piece, asked + 100_000));
      }
    }

    /** Straight from the reply, so that a long one costs no more than its bytes. */
    private void sendPiece(int xid, int count) throws IOException {
      int from = sent;
      sent += count;
      byte[] head = opaque(xid, sent == reply.bytes().length ? END : 0, new byte[0], count);
      int mark = 0x8000_0000 | (head.length - Integer.BYTES + count + (-count & 3));
      out.write(ByteBuffer.wrap(head).putInt(0, mark).array());
      out.write(reply.bytes(), from, count);
      out.write(new byte[-count & 3]);
    }

    private void send(byte[] record) throws IOException {
      out.write(record);
    }
  }

  private static byte[] opaque(int xid, int reason, byte[] data, int claimed) throws IOException {
    ByteArrayOutputStream results = new ByteArrayOutputStream();
    DataOutputStream xdr = new DataOutputStream(results);
    xdr.writeInt(0);
    xdr.writeInt(reason);
    xdr.writeInt(claimed);
    xdr.write(data);
    xdr.write(new byte[-data.length & 3]);
    return record(xid, results.toByteArray());
  }

  private static byte[] record(int xid, int... results) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int result : results) {
      new DataOutputStream(bytes).writeInt(result);
    }
    return record(xid, bytes.toByteArray());
  }

  private static byte[] record(int xid, byte[] results) throws IOException {
    ByteArrayOutputStream record = new ByteArrayOutputStream();
    DataOutputStream xdr = new DataOutputStream(record);
    xdr.writeInt(0x8000_0000 | (24 + results.length));
    xdr.writeInt(xid);
    xdr.writeInt(1); // a reply
    xdr.write(new byte[16]); // accepted, no verifier, success
    xdr.write(results);
    return record.toByteArray();
  }
}

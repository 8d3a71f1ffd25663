package mainsgap.link;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.DatagramPacket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.MulticastSocket;
import java.net.NetworkInterface;
import java.net.StandardSocketOptions;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A neighbour on the network that announces services, by our own bytes (RFC 1035 clause 4, RFC 6762
 * clauses 5 and 6, RFC 6763): it answers every question with all that it has.
 */
public final class MulticastAnnouncer implements AutoCloseable {
  private static final InetSocketAddress GROUP = new InetSocketAddress("224.0.0.251", 5353);
  private static final int TYPE_A = 1;
  private static final int TYPE_PTR = 12;
  private static final int TYPE_TXT = 16;
  private static final int TYPE_SRV = 33;
  private static final int CLASS_IN = 1;
  private static final int SECONDS_TO_LIVE = 120;

  private final MulticastSocket socket;
  private final List<byte[]> packets = new ArrayList<>();

  /** Announces on the network of {@code own}. */
  public MulticastAnnouncer(InetAddress own) throws IOException {
    socket = new MulticastSocket(GROUP.getPort());
    NetworkInterface board = NetworkInterface.getByInetAddress(own);
    socket.setNetworkInterface(board);
    socket.setOption(StandardSocketOptions.IP_MULTICAST_LOOP, true);
    socket.joinGroup(GROUP, board);
  }

  /** Has a service whose host is at {@code address}. */
  public MulticastAnnouncer having(
      String type, String name, int port, InetAddress address, String... texts) {
    String full = name + "." + type + ".local";
    String host = "host-" + port + ".local";
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeShort(0);
      out.writeShort(0x8400);
      out.writeShort(0);
      out.writeShort(4);
      out.writeInt(0);
      record(out, name(type + ".local", ""), TYPE_PTR, name(full, name));
      record(out, name(full, name), TYPE_SRV, service(port, host));
      record(out, name(full, name), TYPE_TXT, texts(texts));
      record(out, name(host, ""), TYPE_A, address.getAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    packets.add(bytes.toByteArray());
    return this;
  }

  /** Sends any bytes at each question. */
  public MulticastAnnouncer babbling(byte[] packet) {
    packets.add(packet);
    return this;
  }

  /** Begins to answer. */
  public MulticastAnnouncer start() {
    Thread thread = new Thread(this::answer, "multicast-announcer");
    thread.setDaemon(true);
    thread.start();
    return this;
  }

  @Override
  public void close() {
    socket.close();
  }

  private void answer() {
    byte[] question = new byte[9000];
    while (!socket.isClosed()) {
      try {
        DatagramPacket packet = new DatagramPacket(question, question.length);
        socket.receive(packet);
        if (packet.getLength() > 12 && (question[2] & 0x80) == 0) {
          for (byte[] answer : packets) {
            socket.send(new DatagramPacket(answer, answer.length, GROUP));
          }
        }
      } catch (IOException e) {
        // the test is over, or the packet was too large to be sent
      }
    }
  }

  private static void record(DataOutputStream out, byte[] name, int type, byte[] data)
      throws IOException {
    out.write(name);
    out.writeShort(type);
    out.writeShort(CLASS_IN);
    out.writeInt(SECONDS_TO_LIVE);
    out.writeShort(data.length);
    out.write(data);
  }

  /** A name whose first label may hold dots. */
  private static byte[] name(String dotted, String firstLabel) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      String rest = dotted;
      if (!firstLabel.isEmpty()) {
        label(out, firstLabel);
        rest = dotted.substring(firstLabel.length() + 1);
      }
      for (String label : rest.split("\\.", -1)) {
        label(out, label);
      }
      out.writeByte(0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static void label(DataOutputStream out, String label) throws IOException {
    byte[] bytes = label.getBytes(StandardCharsets.UTF_8);
    out.writeByte(bytes.length);
    out.write(bytes);
  }

  private static byte[] service(int port, String host) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.writeInt(0);
    out.writeShort(port);
    out.write(name(host, ""));
    return bytes.toByteArray();
  }

  private static byte[] texts(String... texts) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    for (String text : texts) {
      label(out, text);
    }
    if (texts.length == 0) {
      out.writeByte(0);
    }
    return bytes.toByteArray();
  }
}

package mainsgap.link;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import mainsgap.link.ResourceName.Vxi11;
import mainsgap.link.Vxi11Broadcast.Network;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class Vxi11BroadcastTest {
  /** As an open LXI library sends it; no record mark on UDP. */
  private static final String QUESTION =
      "000003e8 00000000 00000002 000186a0 00000002 00000003 00000000 00000000 00000000 00000000"
          + " 000607af 00000001 00000006 00000000";

  private static final String ANSWER_PORT_1024 =
      "000003e8 00000001 00000000 00000000 00000000 00000000 00000400";

  private final List<DatagramSocket> peers = new ArrayList<>();

  @AfterEach
  void close() {
    peers.forEach(DatagramSocket::close);
  }

  @Test
  void asksForTheCoreChannelAndNamesWhoAnswers() throws IOException {
    CompletableFuture<byte[]> question = new CompletableFuture<>();
    Network network = peer(question, ANSWER_PORT_1024);
    assertEquals(List.of(new Vxi11(0, "127.0.0.1", "inst0")), find(network));
    assertArrayEquals(HexFormat.of().parseHex(QUESTION.replace(" ", "")), question.join());
  }

  @Test
  void whoAnswersOnTwoNetworksIsNamedOnce() throws IOException {
    Network one = peer(new CompletableFuture<>(), ANSWER_PORT_1024);
    Network other = peer(new CompletableFuture<>(), ANSWER_PORT_1024, ANSWER_PORT_1024);
    assertEquals(List.of(new Vxi11(0, "127.0.0.1", "inst0")), find(one, other));
  }

  /** Port 0 means that the portmapper knows no such program (RFC 1833). */
  @Test
  void whoHasNoSuchProgramOrAnswersNonsenseIsLeftOut() throws IOException {
    Network network =
        peer(
            new CompletableFuture<>(),
            "000003e8 00000001 00000000 00000000 00000000 00000000 00000000",
            "000003e7 00000001 00000000 00000000 00000000 00000000 00000400",
            "000003e8 00000001 00000000 00000000 00000000 00000001",
            "000003e8 00000001 00000001 00000000 00000002 00000002",
            "000003e8 00000001 00000000 00000000 7fffffff 00000000 00000400",
            "000003e8 00000001 00000000 00000000 00000000 00000000 00010400",
            "000003e8 00000001 0000",
            "000003e8 00",
            "");
    assertEquals(List.of(), find(network));
  }

  @Test
  void silenceEndsAtTheDeadline() throws IOException {
    assertEquals(List.of(), find(peer(new CompletableFuture<>())));
    assertEquals(List.of(), find());
  }

  @Test
  void aStopEndsTheListening() throws IOException {
    StopRequest stop = new StopRequest();
    stop.request();
    List<Network> networks = List.of(peer(new CompletableFuture<>(), ANSWER_PORT_1024));
    Deadline far = Deadline.after(Duration.ofMinutes(10), Clock.system());
    assertThrows(StoppedException.class, () -> Vxi11Broadcast.find(networks, far, stop));
  }

  @Test
  void aNetworkThatTakesNothingLeavesTheOthers() throws IOException {
    // RFC 5737: 192.0.2.0/24 belongs to nobody, so that nothing can be sent from it
    Network foreign =
        new Network(InetAddress.getByName("192.0.2.1"), new InetSocketAddress("192.0.2.255", 111));
    Network network = peer(new CompletableFuture<>(), ANSWER_PORT_1024);
    assertEquals(1, find(foreign, network).size());
    LinkException e = assertThrows(LinkException.class, () -> find(foreign));
    assertSays(e, "could not be asked for by broadcast", "check the network");
  }

  private static List<Vxi11> find(Network... networks) {
    Deadline deadline = Deadline.after(Duration.ofMillis(300), Clock.system());
    return Vxi11Broadcast.find(List.of(networks), deadline, new StopRequest());
  }

  /** A portmapper on loopback that meets the first question with these answers. */
  private Network peer(CompletableFuture<byte[]> question, String... answers) throws IOException {
    InetAddress loopback = InetAddress.getLoopbackAddress();
    DatagramSocket socket = new DatagramSocket(0, loopback);
    peers.add(socket);
    Thread thread = new Thread(() -> answer(socket, question, answers), "datagram-peer");
    thread.setDaemon(true);
    thread.start();
    return new Network(loopback, new InetSocketAddress(loopback, socket.getLocalPort()));
  }

  private static void answer(
      DatagramSocket socket, CompletableFuture<byte[]> question, String... answers) {
    DatagramPacket packet = new DatagramPacket(new byte[1024], 1024);
    try {
      socket.receive(packet);
      byte[] asked = new byte[packet.getLength()];
      System.arraycopy(packet.getData(), 0, asked, 0, asked.length);
      question.complete(asked);
      for (String answer : answers) {
        byte[] bytes = HexFormat.of().parseHex(answer.replace(" ", ""));
        socket.send(new DatagramPacket(bytes, bytes.length, packet.getSocketAddress()));
      }
    } catch (IOException e) {
      question.completeExceptionally(e); // the test is over
    }
  }
}

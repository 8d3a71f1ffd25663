package mainsgap.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.InterfaceAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Finds instruments by VXI-11: asks the portmappers of a network, all at once, for the core
 * channel's program. Each host that has one is an instrument, or a gateway to several. Nothing else
 * is sent.
 */
public final class Vxi11Broadcast {
  private static final Logger LOG = LoggerFactory.getLogger(Vxi11Broadcast.class);

  /** A network with more is no bench. */
  private static final int MOST_FOUND = 1024;

  private static final int XID = 1000;
  private static final int LONGEST_ANSWER_BYTES = 1024;
  private static final long BETWEEN_LOOKS_MILLIS = 50;

  private Vxi11Broadcast() {}

  /**
   * Where a question goes out.
   *
   * @param from the computer's own address on that network
   * @param to the network's broadcast address and the portmappers' port
   */
  record Network(InetAddress from, InetSocketAddress to) {}

  /**
   * Asks on every network of this computer and listens until the deadline; about a second suits a
   * local network.
   *
   * @return the first device of each host that answered, in the order of their answers
   * @throws LinkException where nothing could be sent at all
   * @throws StoppedException as soon as {@code stop} is requested
   */
  public static List<ResourceName.Vxi11> find(Deadline deadline, StopRequest stop) {
    return find(networks(), deadline, stop);
  }

  static List<ResourceName.Vxi11> find(
      List<Network> networks, Deadline deadline, StopRequest stop) {
    try (Selector selector = Selector.open()) {
      try {
        ask(networks, selector);
        return listen(selector, deadline, stop);
      } finally {
        for (SelectionKey key : selector.keys()) {
          key.channel().close();
        }
      }
    } catch (IOException e) {
      throw new LinkException(
          "VXI-11 instruments could not be asked for by broadcast ("
              + e.getMessage()
              + "): check the network connection, or give the instrument's address",
          e);
    }
  }

  /** Sends the question; one network that takes none leaves the others. */
  private static void ask(List<Network> networks, Selector selector) throws IOException {
    byte[] question =
        RpcMessages.datagram(
            XID,
            Portmapper.GET_PORT,
            Portmapper.arguments(Vxi11Calls.CORE_PROGRAM, Vxi11Calls.VERSION),
            Portmapper.ARGUMENT_BYTES);
    IOException failed = null;
    for (Network network : networks) {
      DatagramChannel channel = DatagramChannel.open();
      try {
        channel.configureBlocking(false);
        channel.setOption(StandardSocketOptions.SO_BROADCAST, true);
        channel.bind(new InetSocketAddress(network.from(), 0));
        channel.send(ByteBuffer.wrap(question), network.to());
        channel.register(selector, SelectionKey.OP_READ);
      } catch (IOException e) {
        LOG.debug("no broadcast on {}: {}", network, e.getMessage());
        channel.close();
        failed = e;
      }
    }
    if (failed != null && selector.keys().isEmpty()) {
      throw failed;
    }
  }

  private static List<ResourceName.Vxi11> listen(
      Selector selector, Deadline deadline, StopRequest stop) throws IOException {
    Set<ResourceName.Vxi11> found = new LinkedHashSet<>();
    while (!deadline.hasPassed() && !selector.keys().isEmpty() && found.size() < MOST_FOUND) {
      if (stop.isRequested() || Thread.currentThread().isInterrupted()) {
        throw new StoppedException();
      }
      long millis = Math.min(BETWEEN_LOOKS_MILLIS, deadline.remaining().toMillis() + 1);
      selector.select(key -> take(key, found), millis);
    }
    return List.copyOf(found);
  }

  private static void take(SelectionKey key, Set<ResourceName.Vxi11> found) {
    ByteBuffer answer = ByteBuffer.allocate(LONGEST_ANSWER_BYTES);
    try {
      InetSocketAddress from =
          (InetSocketAddress) ((DatagramChannel) key.channel()).receive(answer);
      if (from != null && Portmapper.portIn(answer.array(), answer.position(), XID).isPresent()) {
        found.add(new ResourceName.Vxi11(0, from.getAddress().getHostAddress(), "inst0"));
      }
    } catch (IOException e) {
      LOG.debug("an answer to the broadcast was lost: {}", e.getMessage());
      key.cancel();
    }
  }

  private static List<Network> networks() {
    try {
      List<Network> networks = new ArrayList<>();
      for (NetworkInterface board : NetworkInterface.networkInterfaces().toList()) {
        if (board.isUp() && !board.isLoopback()) {
          for (InterfaceAddress address : board.getInterfaceAddresses()) {
            InetAddress everyone = address.getBroadcast();
            if (everyone != null) {
              networks.add(
                  new Network(
                      address.getAddress(), new InetSocketAddress(everyone, Portmapper.PORT)));
            }
          }
        }
      }
      return networks;
    } catch (SocketException e) {
      throw new LinkException(
          "the networks of this computer cannot be listed: " + e.getMessage(), e);
    }
  }
}

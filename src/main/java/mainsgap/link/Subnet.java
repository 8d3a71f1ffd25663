package mainsgap.link;

import java.net.InetAddress;
import java.net.InterfaceAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import org.jspecify.annotations.Nullable;

/**
 * The network that one of this computer's addresses is on. Multicast DNS speaks of the local link
 * alone (RFC 6762 clause 11), so that an address beyond it is a mistake or a lie.
 */
record Subnet(InetAddress own, int prefixBits) {

  static Subnet of(InetAddress own) {
    return new Subnet(own, prefixBits(own));
  }

  private static int prefixBits(InetAddress own) {
    try {
      NetworkInterface board = NetworkInterface.getByInetAddress(own);
      if (board != null) {
        for (InterfaceAddress address : board.getInterfaceAddresses()) {
          if (address.getAddress().equals(own)) {
            return address.getNetworkPrefixLength();
          }
        }
      }
    } catch (SocketException e) {
      // the board went away: only the address itself is left
    }
    return 8 * own.getAddress().length;
  }

  /** The first of the addresses that is on this network, or local to its link; else null. */
  @Nullable InetAddress nearest(InetAddress... addresses) {
    for (InetAddress address : addresses) {
      if (contains(address)) {
        return address;
      }
    }
    for (InetAddress address : addresses) {
      if (address.isLinkLocalAddress() && !own.isLoopbackAddress()) {
        return address;
      }
    }
    return null;
  }

  boolean contains(InetAddress address) {
    byte[] here = own.getAddress();
    byte[] there = address.getAddress();
    if (here.length != there.length) {
      return false;
    }
    for (int bit = 0; bit < prefixBits; bit++) {
      int mask = 0x80 >> bit % 8;
      if ((here[bit / 8] & mask) != (there[bit / 8] & mask)) {
        return false;
      }
    }
    return true;
  }
}

package mainsgap.link;

import java.io.IOException;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import mainsgap.waiting.Deadline;

/** The loopback peer on a raw socket, which has no frames that could lie. */
public final class RawSocketPeer implements LinkPeer {
  private final LoopbackPeer peer;

  /** Starts to serve. */
  public RawSocketPeer() throws IOException {
    peer = new LoopbackPeer();
  }

  /** Where it listens. */
  int port() {
    return peer.port();
  }

  @Override
  public Set<Manner> manners() {
    return EnumSet.complementOf(
        EnumSet.of(Manner.END_APART, Manner.WRONG_FRAME, Manner.FRAME_CLAIMS_MORE));
  }

  @Override
  public Link open(Deadline connectBy) {
    return ResourceName.parse(peer.resource()).open(connectBy);
  }

  @Override
  public void answer(String message, Manner manner, byte[] reply) {
    byte[] half = Arrays.copyOf(reply, reply.length / 2);
    switch (manner) {
      case WHOLE -> peer.answer(message, LoopbackPeer.bytes(reply));
      case ONE_BYTE_AT_A_TIME -> peer.answer(message, LoopbackPeer.oneByOne(reply));
      case STALLS_HALFWAY -> peer.answer(message, LoopbackPeer.bytes(half));
      case CLOSES_HALFWAY -> peer.answer(message, LoopbackPeer.bytesThenClose(half));
      default -> throw new IllegalArgumentException("a raw socket has no " + manner);
    }
  }

  @Override
  public void close() throws IOException {
    peer.close();
  }
}

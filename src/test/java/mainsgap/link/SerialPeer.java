package mainsgap.link;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import mainsgap.waiting.Deadline;

/** The loopback peer behind a pseudo-terminal: a serial line has no frames that could lie. */
public final class SerialPeer implements LinkPeer {
  private final RawSocketPeer peer = new RawSocketPeer();
  private final List<SerialBridge> bridges = new ArrayList<>();
  private final Path folder;

  /** Skips the test where the pseudo-terminal can't be made; makes each one in the folder. */
  public SerialPeer(Path folder) throws IOException {
    SerialBridge.assumeThere();
    this.folder = folder;
  }

  @Override
  public Set<Manner> manners() {
    return EnumSet.copyOf(peer.manners());
  }

  @Override
  public Link open(Deadline connectBy) {
    // the peer serves one client at a time, and a serial port has one end
    bridges.forEach(SerialBridge::close);
    try {
      SerialBridge bridge = SerialBridge.to(peer.port(), folder, "port" + bridges.size());
      bridges.add(bridge);
      return ResourceName.parse(bridge.resource()).open(connectBy);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void answer(String message, Manner manner, byte[] reply) {
    peer.answer(message, manner, reply);
  }

  @Override
  public void close() throws IOException {
    bridges.forEach(SerialBridge::close);
    peer.close();
  }
}

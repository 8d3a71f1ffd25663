package mainsgap.scpi;

import java.io.IOException;
import mainsgap.link.HislipPeer;
import mainsgap.link.LinkPeer;

/** The same on a server that takes short messages only and lets replies queue up. */
class OverlappedHislipSuiteTest extends LinkSuite {
  @Override
  LinkPeer peer() throws IOException {
    return new HislipPeer().overlapped().takingAtMost(1000);
  }
}

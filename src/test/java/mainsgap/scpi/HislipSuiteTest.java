package mainsgap.scpi;

import java.io.IOException;
import mainsgap.link.HislipPeer;
import mainsgap.link.LinkPeer;

class HislipSuiteTest extends LinkSuite {
  @Override
  LinkPeer peer() throws IOException {
    return new HislipPeer();
  }
}

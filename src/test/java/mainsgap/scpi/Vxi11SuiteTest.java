package mainsgap.scpi;

import java.io.IOException;
import mainsgap.link.LinkPeer;
import mainsgap.link.Vxi11Peer;

class Vxi11SuiteTest extends LinkSuite {
  @Override
  LinkPeer peer() throws IOException {
    return new Vxi11Peer();
  }
}

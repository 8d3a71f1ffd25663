package mainsgap.scpi;

import java.io.IOException;
import mainsgap.link.LinkPeer;
import mainsgap.link.RawSocketPeer;

class RawSocketSuiteTest extends LinkSuite {
  @Override
  LinkPeer peer() throws IOException {
    return new RawSocketPeer();
  }
}

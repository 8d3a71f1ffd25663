package mainsgap.scpi;

import mainsgap.link.BulkUsbtmcPeer;
import mainsgap.link.LinkPeer;

class BulkUsbtmcSuiteTest extends LinkSuite {
  @Override
  LinkPeer peer() {
    return new BulkUsbtmcPeer();
  }
}

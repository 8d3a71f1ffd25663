package mainsgap.scpi;

import mainsgap.link.KernelUsbtmcPeer;
import mainsgap.link.LinkPeer;

class KernelUsbtmcSuiteTest extends LinkSuite {
  @Override
  LinkPeer peer() {
    return new KernelUsbtmcPeer();
  }
}

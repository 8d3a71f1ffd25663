package mainsgap.scpi;

import java.io.IOException;
import java.nio.file.Path;
import mainsgap.link.LinkPeer;
import mainsgap.link.SerialPeer;
import org.junit.jupiter.api.io.TempDir;

class SerialSuiteTest extends LinkSuite {
  @TempDir Path folder = Path.of("");

  @Override
  LinkPeer peer() throws IOException {
    return new SerialPeer(folder);
  }
}

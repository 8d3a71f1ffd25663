package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import mainsgap.desk.DeskToolkit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(DeskToolkit.class)
class FrameSpeedTest {

  @Tag("benchmark")
  @Test
  void theWorkOfAFrameIsTold() throws IOException {
    List<Frames> all = FrameBench.write(Path.of("target", "frame-speed.txt"));
    assertTrue(all.stream().allMatch(Frames::isFull));
  }
}

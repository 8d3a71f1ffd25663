package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class EnterKeyTest {
  private final AtomicInteger presses = new AtomicInteger();

  @Test
  void eachLineIsOnePress() {
    EnterKey.followLines(
        new ByteArrayInputStream("\nsome words\n\n".getBytes(StandardCharsets.UTF_8)),
        presses::incrementAndGet);
    assertEquals(3, presses.get());
  }

  @Test
  void anEmptyInputIsNoPress() {
    EnterKey.followLines(InputStream.nullInputStream(), presses::incrementAndGet);
    assertEquals(0, presses.get());
  }
}

package mainsgap.cli;

import java.io.IOException;
import java.io.InputStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Listens for Enter on a thread of its own, which never keeps the program from ending. */
final class EnterKey {
  private static final Logger LOG = LoggerFactory.getLogger(EnterKey.class);

  private EnterKey() {}

  /** Calls {@code onEnter} at each line's end, and {@code onEnd} when the input ends. */
  static void listen(InputStream in, Runnable onEnter, Runnable onEnd) {
    Thread thread =
        new Thread(
            () -> {
              followLines(in, onEnter);
              onEnd.run();
            },
            "enter-key");
    thread.setDaemon(true);
    thread.start();
  }

  static void followLines(InputStream in, Runnable onEnter) {
    try {
      for (int character = in.read(); character >= 0; character = in.read()) {
        if (character == '\n') {
          onEnter.run();
        }
      }
    } catch (IOException e) {
      LOG.info("standard input can no longer be read: {}", e.getMessage());
    }
  }
}

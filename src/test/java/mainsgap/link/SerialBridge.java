package mainsgap.link;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;

/**
 * A serial port that is none: a pseudo-terminal whose other end socat ties to a TCP port of this
 * machine. Whatever answers there answers on the serial line. It is good for one connection.
 */
public final class SerialBridge implements AutoCloseable {
  private final Path path;
  private final Process socat;

  private SerialBridge(Path path, Process socat) {
    this.path = path;
    this.socat = socat;
  }

  /** Skips the test, by name, where socat is not installed. */
  public static void assumeThere() {
    boolean there =
        Stream.of(System.getenv("PATH").split(File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, "socat")));
    assumeTrue(there, "socat is not installed: serial lines are not tested");
  }

  /** Ties {@code folder/name} to a port of 127.0.0.1, and waits until it can be opened. */
  public static SerialBridge to(int tcpPort, Path folder, String name) throws IOException {
    Path path = folder.resolve(name);
    Process socat =
        new ProcessBuilder(
                "socat",
                "-t0.01", // how long it stays when one end has closed
                "PTY,link=" + path + ",raw,echo=0",
                "TCP:127.0.0.1:" + tcpPort + ",nodelay")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    Deadline deadline = Deadline.after(Duration.ofSeconds(10), Clock.system());
    while (!isRaw(path) && !deadline.hasPassed()) {
      Clock.system().pause(Duration.ofMillis(5), new StopRequest());
    }
    assertTrue(isRaw(path), "socat made no pseudo-terminal");
    return new SerialBridge(path, socat);
  }

  /** Its settings are the last thing that socat makes: they would undo those of who opens it. */
  private static boolean isRaw(Path path) throws IOException {
    if (!Files.exists(path)) {
      return false;
    }
    return stty(path, "-a").contains("-icanon");
  }

  /** What another program may do that opens the port too: settings as stty has them. */
  void changeTerminal(String... settings) throws IOException {
    stty(path, settings);
  }

  private static String stty(Path path, String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of("stty", "-F", path.toString()));
    command.addAll(List.of(words));
    Process stty = new ProcessBuilder(command).start();
    return new String(stty.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  /** Its resource name, with the standard settings. */
  public String resource() {
    return "ASRL" + path + "::INSTR";
  }

  /** Its resource name with other settings. */
  public String resource(String settings) {
    return "ASRL" + path + "," + settings + "::INSTR";
  }

  /** The end of the process is the adapter being pulled out. */
  @Override
  public void close() {
    socat.destroy();
    try {
      assertTrue(socat.waitFor(10, TimeUnit.SECONDS), "socat does not end");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

package mainsgap.link;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.time.Duration;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;

/** A program that still sends over a serial line some time after it was told to end. */
final class SerialAtTheEnd {
  private SerialAtTheEnd() {}

  /** Begins to end at once. */
  public static void main(String[] arguments) {
    Link link = ResourceName.parse(arguments[0]).open(within(5));
    link.write("ON\n".getBytes(US_ASCII), within(5));
    Runtime.getRuntime().addShutdownHook(new Thread(() -> switchOff(link), "switch-off"));
    System.exit(0);
  }

  private static void switchOff(Link link) {
    Clock.system().pause(Duration.ofMillis(500), new StopRequest());
    link.write("OFF\n".getBytes(US_ASCII), within(5));
    link.close();
  }

  private static Deadline within(int seconds) {
    return Deadline.after(Duration.ofSeconds(seconds), Clock.system());
  }
}

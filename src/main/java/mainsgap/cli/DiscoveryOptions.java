package mainsgap.cli;

import java.util.ArrayList;
import java.util.List;
import mainsgap.bench.DiscoveryRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where instruments are looked for. */
final class DiscoveryOptions {
  private static final Milliseconds DEFAULT_WAIT = Milliseconds.parse("3s");
  private static final double LONGEST_WAIT_MILLIS = 60_000;

  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec command;

  @Option(
      names = "--wait",
      paramLabel = "TIME",
      converter = Milliseconds.Converter.class,
      description = "How long announcements are awaited, 100ms to 60s (default: 3s).")
  private @Nullable Milliseconds wait;

  @Option(
      names = "--broadcast",
      description =
          "Also asks by broadcast on every network of this computer where VXI-11 is served. Some"
              + " networks do not like that: ask who runs it.")
  private boolean broadcast;

  @Option(
      names = "--identify",
      description = "Asks each instrument that was found *IDN?; serial ports are left alone.")
  private boolean identify;

  @Option(
      names = "--identify-serial",
      description =
          "Opens each serial port at 9600 baud and asks *IDN?: only where you know what hangs on"
              + " every one of them.")
  private boolean identifySerial;

  /** The options that were given, as typed. */
  List<String> given() {
    List<String> given = new ArrayList<>();
    if (wait != null) {
      given.add("--wait");
    }
    if (broadcast) {
      given.add("--broadcast");
    }
    if (identify) {
      given.add("--identify");
    }
    if (identifySerial) {
      given.add("--identify-serial");
    }
    return given;
  }

  /** The request. */
  DiscoveryRequest request() {
    Milliseconds time = wait == null ? DEFAULT_WAIT : wait;
    if (!(time.millis() >= 100 && time.millis() <= LONGEST_WAIT_MILLIS) && command != null) {
      throw new ParameterException(
          command.commandLine(), "--wait is 100ms to 60s, found " + time.asTyped());
    }
    return new DiscoveryRequest(time.toDuration(), broadcast, identify, identifySerial);
  }
}

package mainsgap.arming;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiException;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import org.jspecify.annotations.Nullable;

/** The output of an AC source as the mains switch: told, then asked for errors and its state. */
public final class ScpiOutput implements SwitchLine {
  /** An emergency waits for the exchange under way: not for long. */
  private static final Duration REPLY_TIMEOUT = Duration.ofSeconds(2);

  private final ResourceName resource;
  private final ScpiOutputCommands commands;
  private final Clock clock;
  private @Nullable ScpiInstrument source;

  /** The source at {@code resource}; the first call opens the link. */
  public ScpiOutput(ResourceName resource, ScpiOutputCommands commands, Clock clock) {
    this.resource = resource;
    this.commands = commands;
    this.clock = clock;
  }

  @Override
  public String words() {
    return "the AC source at " + resource;
  }

  @Override
  public void move(SwitchMove move) {
    tell(
        switch (move) {
          case OPEN -> List.of(commands.open());
          case CLOSE -> List.of(commands.close());
        },
        move);
  }

  @Override
  public SwitchPosition position() {
    return exchange(this::position);
  }

  @Override
  public boolean choosesAngle() {
    return !commands.openAtAngle().isEmpty();
  }

  @Override
  public void openAt(double degrees) {
    String angle = String.format(Locale.ROOT, "%.1f", degrees);
    tell(
        commands.openAtAngle().stream()
            .map(command -> command.replace(ScpiOutputCommands.ANGLE, angle))
            .toList(),
        SwitchMove.OPEN);
  }

  @Override
  public void close() {
    if (source != null) {
      source.close();
      source = null;
    }
  }

  private void tell(List<String> messages, SwitchMove move) {
    SwitchPosition found =
        exchange(
            open -> {
              messages.forEach(open::command);
              open.checkErrors();
              return position(open);
            });
    if (found != SwitchPosition.after(move)) {
      throw new ScpiException(
          resource
              + " took '"
              + String.join("', '", messages)
              + "' without an error, but says that its output is "
              + (found == SwitchPosition.CLOSED ? "on" : "off")
              + ": look at its front panel, its protection may have tripped");
    }
  }

  private SwitchPosition position(ScpiInstrument open) {
    String reply = open.query(commands.position()).strip().toUpperCase(Locale.ROOT);
    return switch (reply) {
      case "0", "+0", "OFF" -> SwitchPosition.OPEN;
      case "1", "+1", "ON" -> SwitchPosition.CLOSED;
      default ->
          throw new ScpiException(
              resource
                  + " answered '"
                  + reply
                  + "' to '"
                  + commands.position()
                  + "'; expected 0, 1, OFF or ON: check the commands in the rig file");
    };
  }

  private <T> T exchange(Function<ScpiInstrument, T> talk) {
    try {
      if (source == null) {
        source =
            ScpiInstrument.open(
                resource, ScpiOptions.standard().withReplyTimeout(REPLY_TIMEOUT), clock);
        source.clearStatus();
      }
      return talk.apply(source);
    } catch (LinkException e) {
      close();
      throw e;
    }
  }
}

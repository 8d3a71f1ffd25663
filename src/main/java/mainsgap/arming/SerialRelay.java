package mainsgap.arming;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import mainsgap.link.Link;
import mainsgap.link.LinkException;
import mainsgap.link.LinkTimeoutException;
import mainsgap.link.ResourceName;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.jspecify.annotations.Nullable;

/**
 * A relay on a serial line, which drives the coil of a rated contactor and never mains itself. What
 * it understands is data.
 */
public final class SerialRelay implements SwitchLine {
  private final ResourceName resource;
  private final RelayFile relay;
  private final Clock clock;
  private @Nullable Link link;

  /** The relay at {@code resource}; the first call opens the link. */
  public SerialRelay(ResourceName resource, RelayFile relay, Clock clock) {
    this.resource = resource;
    this.relay = relay;
    this.clock = clock;
  }

  @Override
  public String words() {
    return "the relay '" + relay.name() + "' at " + resource;
  }

  @Override
  public void move(SwitchMove move) {
    tell(
        switch (move) {
          case OPEN -> relay.off();
          case CLOSE -> relay.on();
        });
  }

  @Override
  public SwitchPosition position() {
    RelayFile.State state = relay.state();
    if (state == null) {
      return SwitchPosition.UNKNOWN;
    }
    byte[] on = state.whenOn().reply();
    byte[] answer = exchange(state.question(), List.of(on, state.whenOff().reply()));
    return Arrays.equals(answer, on) ? SwitchPosition.CLOSED : SwitchPosition.OPEN;
  }

  @Override
  public boolean choosesAngle() {
    return relay.offAtAngle() != null;
  }

  @Override
  public void openAt(double degrees) {
    RelayExchange offAtAngle = relay.offAtAngle();
    if (offAtAngle == null) {
      throw new IllegalStateException("this relay does not choose the angle");
    }
    tell(offAtAngle.at(String.format(Locale.ROOT, "%.1f", degrees)));
  }

  @Override
  public void close() {
    if (link != null) {
      link.close();
      link = null;
    }
  }

  private void tell(RelayExchange exchange) {
    byte[] unused = exchange(exchange.message(), List.of(exchange.reply()));
  }

  /** Sends, and takes one of the replies: the others differ from it, none begins like another. */
  private byte[] exchange(byte[] message, List<byte[]> replies) {
    Deadline deadline = Deadline.after(relay.replyWait(), clock);
    try {
      Link open = open();
      open.write(message, deadline);
      return answer(open, replies, deadline);
    } catch (LinkException e) {
      // What is still on its way would be taken for the answer to the next message.
      close();
      throw e;
    }
  }

  private Link open() {
    Link open = link;
    if (open == null) {
      open = resource.open(Deadline.after(relay.replyWait(), clock));
      link = open;
    }
    return open;
  }

  private byte[] answer(Link open, List<byte[]> replies, Deadline deadline) {
    int longest = replies.stream().mapToInt(reply -> reply.length).max().orElse(0);
    ByteBuffer got = ByteBuffer.allocate(longest);
    while (true) {
      byte[] soFar = Arrays.copyOf(got.array(), got.position());
      for (byte[] reply : replies) {
        if (Arrays.equals(soFar, reply)) {
          return reply;
        }
      }
      boolean mayBecomeOne =
          replies.stream()
              .anyMatch(
                  reply ->
                      reply.length > soFar.length
                          && Arrays.equals(soFar, Arrays.copyOf(reply, soFar.length)));
      if (!mayBecomeOne) {
        throw new LinkException(wrongAnswer(soFar, replies));
      }
      try {
        // one byte at a time: what follows the reply belongs to nobody and must not be waited for
        got.limit(got.position() + 1);
        var unused = open.read(got, deadline);
      } catch (LinkTimeoutException e) {
        throw new LinkException(
            wrongAnswer(soFar, replies) + " within " + Sentences.of(relay.replyWait()), e);
      }
    }
  }

  private String wrongAnswer(byte[] soFar, List<byte[]> replies) {
    return words()
        + " answered "
        + RelayExchange.words(soFar, soFar.length)
        + " where "
        + String.join(
            " or ",
            replies.stream().map(reply -> RelayExchange.words(reply, reply.length)).toList())
        + " is expected";
  }
}

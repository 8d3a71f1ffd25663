package mainsgap.link;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * USBTMC with USB488: messages with an end mark, device clear, status byte.
 *
 * <p>An instrument that is asked to talk while it has nothing to say counts that as a fault, and
 * some hang. So the link first asks for the status byte until it says that a message is available,
 * which can also be broken off at any time; it reads at once only where the instrument has no
 * status byte, or was seen to leave that bit out.
 */
final class UsbtmcLink implements Link {
  /** IEEE 488.2: bit 4 of the status byte, MAV. */
  private static final int MESSAGE_AVAILABLE = 0x10;

  /** A multiple of every packet size; also what one request asks for. */
  static final int BUFFER_BYTES = 64 * 1024;

  private static final int SLICE_MILLIS = 100;
  private static final Duration FIRST_PAUSE = Duration.ofMillis(1);
  private static final Duration LONGEST_PAUSE = Duration.ofMillis(20);

  private static final Logger LOG = LoggerFactory.getLogger(UsbtmcLink.class);

  private final ResourceName.Usb resource;
  private final OpenUsbtmc device;
  private final Clock clock;
  private final byte[] buffer = new byte[BUFFER_BYTES];

  /** What was received and not yet asked for; in read mode. */
  private final ByteBuffer pending = ByteBuffer.wrap(buffer).limit(0);

  /** A part of the message has come, and its end has not. */
  private boolean underWay;

  private boolean pendingEndsMessage;
  private boolean asksStatus = true;
  private boolean availabilitySeen;

  /** Takes over the device; {@code clock} is that of the pauses between two looks. */
  UsbtmcLink(ResourceName.Usb resource, UsbtmcDevice device, Clock clock) {
    this.resource = resource;
    this.device = new OpenUsbtmc(resource, device);
    this.clock = clock;
  }

  @Override
  public ResourceName resource() {
    return resource;
  }

  @Override
  public void write(byte[] message, Deadline deadline) {
    takeOwedEnd();
    forget();
    device.send(message, millis(deadline));
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    if (!pending.hasRemaining()) {
      receive(deadline);
    }
    int bytes = Math.min(pending.remaining(), into.remaining());
    into.put(pending.slice().limit(bytes));
    pending.position(pending.position() + bytes);
    return new Received(bytes, pendingEndsMessage && !pending.hasRemaining());
  }

  @Override
  public boolean marksMessageEnd() {
    return true;
  }

  @Override
  public OptionalInt statusByte(Deadline deadline) {
    return device.statusByte(millis(deadline));
  }

  @Override
  public void clear(Deadline deadline) {
    forget();
    device.clear(millis(deadline));
  }

  @Override
  public void close() {
    device.close();
  }

  private void receive(Deadline deadline) {
    boolean begins = !underWay;
    underWay = false; // whatever goes wrong now ends the message
    boolean available = !begins || awaitAvailability(deadline);
    Received news = receiveOnce(deadline);
    if (news.bytes() == 0 && begins) {
      // seen on instruments: an empty transfer first, the reply after it
      news = receiveOnce(deadline);
    }
    asksStatus &= available; // here is a reply of which the status byte said nothing
    underWay = !news.messageEnded();
    pending.clear().limit(news.bytes());
    pendingEndsMessage = news.messageEnded();
  }

  /** Cut into slices where that does no harm, so that closing ends it. */
  private Received receiveOnce(Deadline deadline) {
    long slices = device.resumes() ? deadline.remaining().toMillis() / SLICE_MILLIS : 0;
    for (long i = 0; i < slices && !deadline.hasPassed(); i++) {
      Optional<Received> news = device.receive(buffer, SLICE_MILLIS);
      if (news.isPresent()) {
        return news.get();
      }
    }
    return device.receive(buffer, millis(deadline)).orElseThrow(device::silent);
  }

  /** False where the status byte did not say so, and reading is worth a try. */
  private boolean awaitAvailability(Deadline deadline) {
    // half of the time is left for the try, until the bit was seen to be kept
    Duration left = availabilitySeen ? deadline.remaining() : deadline.remaining().dividedBy(2);
    Duration pause = FIRST_PAUSE;
    while (asksStatus) {
      OptionalInt status = device.statusByte(millis(deadline));
      if (status.isEmpty()) {
        return false;
      }
      if ((status.getAsInt() & MESSAGE_AVAILABLE) != 0) {
        availabilitySeen = true;
        return true;
      }
      if (left.isZero() || deadline.hasPassed()) {
        if (availabilitySeen) {
          throw device.silent();
        }
        return false;
      }
      Duration next = shorter(pause, left);
      rest(next);
      left = left.minus(next);
      pause = shorter(pause.multipliedBy(2), LONGEST_PAUSE);
    }
    return false;
  }

  /** An end that comes apart from the last byte is taken, lest the instrument miss its reader. */
  private void takeOwedEnd() {
    if (underWay && !pending.hasRemaining()) {
      Optional<Received> end = device.receive(buffer, SLICE_MILLIS);
      LOG.debug("{}: behind the reply came {}", resource, end);
    }
  }

  private void forget() {
    pending.limit(0);
    pendingEndsMessage = false;
    underWay = false;
  }

  /** An interrupt does not cut it short: the instrument must still be made safe over the link. */
  private void rest(Duration pause) {
    boolean interrupted = Thread.interrupted();
    try {
      clock.pause(pause, new StopRequest());
    } catch (StoppedException e) {
      interrupted = true;
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private static Duration shorter(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? one : other;
  }

  private static int millis(Deadline deadline) {
    return (int) Math.max(1, Math.min(Integer.MAX_VALUE, deadline.remaining().toMillis()));
  }
}

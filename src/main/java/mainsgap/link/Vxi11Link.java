package mainsgap.link;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** VXI-11: remote calls, with an end of message, a status byte and device clear. */
final class Vxi11Link implements Link {
  private static final Logger LOG = LoggerFactory.getLogger(Vxi11Link.class);

  /** For giving the link back at the end; an instrument that is gone should not hold the user. */
  private static final Duration PARTING = Duration.ofMillis(300);

  private final ResourceName.Vxi11 resource;

  /** Held by the owner while it is in a call: who closes then hangs up instead of parting. */
  private final ReentrantLock calling = new ReentrantLock();

  private volatile Vxi11Core core;
  private volatile boolean closed;
  private Vxi11Reading reading;

  private Vxi11Link(ResourceName.Vxi11 resource, Vxi11Core core) {
    this.resource = resource;
    this.core = core;
    this.reading = new Vxi11Reading(resource, core);
  }

  static Vxi11Link open(ResourceName.Vxi11 resource, Deadline deadline) {
    return new Vxi11Link(resource, Vxi11Core.open(resource, deadline));
  }

  @Override
  public ResourceName resource() {
    return resource;
  }

  @Override
  public void write(byte[] message, Deadline deadline) {
    call(
        () -> {
          reading.drop();
          for (int sent = 0; sent < message.length; ) {
            sent += writePiece(message, sent, deadline);
          }
          return message.length;
        });
  }

  private int writePiece(byte[] message, int from, Deadline deadline) {
    int to = Math.min(message.length, from + core.longestPieceBytes());
    int flags = to == message.length ? Vxi11Calls.FLAG_END : 0;
    int taken = core.write(Arrays.copyOfRange(message, from, to), flags, deadline);
    if (taken < 1 || taken > to - from) {
      throw core.calls()
          .wrong("it says that it took " + taken + " bytes of the " + (to - from) + " sent");
    }
    return taken;
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    return call(() -> reading.read(into, deadline));
  }

  @Override
  public boolean marksMessageEnd() {
    return true;
  }

  @Override
  public OptionalInt statusByte(Deadline deadline) {
    return call(
        () -> {
          reading.holdRest(deadline);
          return OptionalInt.of(core.statusByte(deadline));
        });
  }

  /** An instrument that does not answer to device clear in half of the time is connected anew. */
  @Override
  public void clear(Deadline deadline) {
    boolean cleared = call(() -> clearDevice(deadline.sooner(deadline.remaining().dividedBy(2))));
    if (!cleared) {
      boolean unused = call(() -> reopen(deadline));
    }
    if (closed) {
      core.close();
      throw closedHere();
    }
  }

  private boolean clearDevice(Deadline deadline) {
    reading.drop();
    try {
      if (core.calls().isAwaiting()) {
        core.abort(deadline.sooner(deadline.remaining().dividedBy(2)));
      }
      core.clear(deadline);
      return true;
    } catch (LinkException e) {
      LOG.debug("{} is connected anew, since it was not cleared: {}", resource, e.getMessage());
      return false;
    }
  }

  private boolean reopen(Deadline deadline) {
    core.close();
    core = Vxi11Core.open(resource, deadline);
    reading = new Vxi11Reading(resource, core);
    return true;
  }

  @Override
  public void close() {
    if (!closed && calling.tryLock()) {
      try {
        core.destroyLink(Deadline.after(PARTING, Clock.system()));
      } finally {
        calling.unlock();
      }
    }
    closed = true;
    core.close();
  }

  private <T> T call(Supplier<T> work) {
    calling.lock();
    try {
      if (closed) {
        throw closedHere();
      }
      return work.get();
    } catch (LinkClosedException e) {
      throw closed ? closedHere() : e;
    } finally {
      calling.unlock();
    }
  }

  private LinkClosedException closedHere() {
    return new LinkClosedException(resource + " was closed by this program");
  }
}

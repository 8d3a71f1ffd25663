package mainsgap.link;

import java.nio.ByteBuffer;
import java.util.OptionalInt;
import mainsgap.waiting.Deadline;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * HiSLIP (IVI-6.1, version 1.0): marks the end of messages, clears the device, polls its status.
 */
final class HislipLink implements Link {
  private static final Logger LOG = LoggerFactory.getLogger(HislipLink.class);

  private final ResourceName.Hislip resource;
  private volatile HislipSession session;
  private volatile boolean closed;

  private HislipLink(ResourceName.Hislip resource, HislipSession session) {
    this.resource = resource;
    this.session = session;
  }

  static HislipLink open(ResourceName.Hislip resource, Deadline deadline) {
    return new HislipLink(resource, HislipOpening.open(resource, deadline));
  }

  @Override
  public ResourceName resource() {
    return resource;
  }

  @Override
  public void write(byte[] message, Deadline deadline) {
    session.write(message, deadline);
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    return session.read(into, deadline);
  }

  @Override
  public boolean marksMessageEnd() {
    return true;
  }

  @Override
  public OptionalInt statusByte(Deadline deadline) {
    return OptionalInt.of(session.statusByte(deadline));
  }

  /** Where the session is beyond a device clear, another is opened. */
  @Override
  public void clear(Deadline deadline) {
    if (!clearedInSession(deadline)) {
      openAgain(deadline);
    }
  }

  @Override
  public void close() {
    closed = true;
    session.close();
  }

  private boolean clearedInSession(Deadline deadline) {
    if (session.isOutOfStep()) {
      return false;
    }
    try {
      session.clear(deadline);
      return true;
    } catch (LinkTimeoutException e) {
      session.drop();
      throw new LinkClosedException(
          resource + " did not finish the device clear in the time allowed: connect again", e);
    } catch (LinkException e) {
      LOG.debug("{}: no device clear in this session", resource, e);
      return false;
    }
  }

  private void openAgain(Deadline deadline) {
    session.drop();
    if (!closed) {
      session = HislipOpening.open(resource, deadline);
    }
    if (closed) {
      session.close();
      throw new LinkClosedException(resource + " was closed by this program");
    }
  }
}

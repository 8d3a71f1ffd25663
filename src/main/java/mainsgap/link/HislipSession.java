package mainsgap.link;

import java.nio.ByteBuffer;
import java.time.Duration;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One open session with a HiSLIP server (IVI-6.1). In synchronized mode the server throws away a
 * reply that a new message overtakes, and this side drops replies whose number is not that of the
 * newest message. In overlapped mode replies queue up, and this side drops one that was given up to
 * its end. Owned by the link's thread, but for {@link #close()}.
 */
final class HislipSession {
  private static final Logger LOG = LoggerFactory.getLogger(HislipSession.class);

  private static final int SYNCHRONIZED = 0;
  private static final int OVERLAPPED_BIT = 0;

  /** While a clear is awaited on one channel, the other is emptied so often. */
  private static final Duration BETWEEN_EMPTYINGS = Duration.ofMillis(20);

  private final ResourceName resource;
  private final HislipChannels channels;
  private final int mostPayloadBytes;
  private final HislipMessageIds ids = new HislipMessageIds();
  private boolean overlapped;
  private boolean replyDelivered;

  /** The message whose payload is handed on at present. */
  private @Nullable HislipHeader piece;

  private boolean replyBegun;
  private boolean replyGivenUp;
  private int interruptionsAhead;
  private int statusesOwed;

  /**
   * Takes over the channels.
   *
   * @param mostPayloadBytes what the server takes in one message
   * @param overlapped the mode that the server chose
   */
  HislipSession(
      ResourceName resource, HislipChannels channels, int mostPayloadBytes, boolean overlapped) {
    this.resource = resource;
    this.channels = channels;
    this.mostPayloadBytes = mostPayloadBytes;
    this.overlapped = overlapped;
  }

  /** Whether replies queue up. */
  boolean isOverlapped() {
    return overlapped;
  }

  /** Whether a message went out by half: the server can't tell where the next one would begin. */
  boolean isOutOfStep() {
    return channels.synchronous().isHalfSent() || channels.asynchronous().isHalfSent();
  }

  /** Sends a message in as many pieces as the server needs. */
  void write(byte[] message, Deadline deadline) {
    requireInStep();
    giveUpReply();
    ByteBuffer rest = ByteBuffer.wrap(message);
    do {
      int end = (int) Math.min(message.length, (long) rest.position() + mostPayloadBytes);
      HislipType type = end == message.length ? HislipType.DATA_END : HislipType.DATA;
      int control = takeReplyDelivered();
      channels.synchronous().send(type, control, ids.next(), rest.limit(end), deadline);
    } while (rest.limit(message.length).hasRemaining());
  }

  /** Waits for at least one byte of a reply or its end. */
  Received read(ByteBuffer into, Deadline deadline) {
    while (true) {
      HislipHeader current = piece == null ? nextPiece(deadline) : piece;
      piece = current;
      int bytes = channels.synchronous().readPayload(into, deadline);
      if (channels.synchronous().hasPayload()) {
        return new Received(bytes, false);
      }
      piece = null;
      boolean ended = current.is(HislipType.DATA_END);
      if (ended) {
        replyBegun = false;
        replyDelivered = true;
      }
      if (ended || bytes > 0 || !into.hasRemaining()) {
        return new Received(bytes, ended);
      }
    }
  }

  /** The status byte (IVI-6.1 6.14); answers to earlier queries that came too late are dropped. */
  int statusByte(Deadline deadline) {
    requireInStep();
    channels
        .asynchronous()
        .send(HislipType.ASYNC_STATUS_QUERY, takeReplyDelivered(), ids.last(), deadline);
    statusesOwed++;
    while (true) {
      HislipHeader answer = nextAsynchronous(HislipType.ASYNC_STATUS_RESPONSE, deadline);
      statusesOwed--;
      if (statusesOwed == 0) {
        return answer.control();
      }
    }
  }

  /**
   * Device clear (IVI-6.1 6.12). It asks for synchronized mode, in which a late reply cannot be
   * taken for the next; the server decides.
   */
  void clear(Deadline deadline) {
    channels.asynchronous().send(HislipType.ASYNC_DEVICE_CLEAR, 0, 0, deadline);
    awaitCleared(deadline);
    channels.synchronous().send(HislipType.DEVICE_CLEAR_COMPLETE, SYNCHRONIZED, 0, deadline);
    HislipHeader agreed = channels.synchronous().next(deadline);
    while (!agreed.is(HislipType.DEVICE_CLEAR_ACKNOWLEDGE)) {
      channels.requireNoError(agreed, channels.synchronous(), deadline);
      agreed = channels.synchronous().next(deadline);
    }
    overlapped = agreed.controlBit(OVERLAPPED_BIT);
    ids.reset();
    replyDelivered = false;
    piece = null;
    replyBegun = false;
    replyGivenUp = false;
    interruptionsAhead = 0;
    statusesOwed = 0;
  }

  /** Ends the session because it is of no more use. */
  void drop() {
    channels.drop();
  }

  /** Ends the session because the program has done with it. */
  void close() {
    channels.close();
  }

  /**
   * Empties the synchronous channel meanwhile: a server that can't get rid of its reply is stuck.
   */
  private void awaitCleared(Deadline deadline) {
    for (long wait = turns(deadline); wait > 0; wait--) {
      channels.synchronous().discardWhatCame();
      if (channels.asynchronous().awaitBytes(Deadline.after(BETWEEN_EMPTYINGS, Clock.system()))) {
        nextAsynchronous(HislipType.ASYNC_DEVICE_CLEAR_ACKNOWLEDGE, deadline);
        return;
      }
    }
    throw new LinkTimeoutException(
        resource + " did not acknowledge the device clear in the time allowed");
  }

  private static long turns(Deadline deadline) {
    return deadline.remaining().dividedBy(BETWEEN_EMPTYINGS) + 1;
  }

  private HislipHeader nextPiece(Deadline deadline) {
    HislipChannel channel = channels.synchronous();
    while (true) {
      HislipHeader next = channel.next(deadline);
      if (next.is(HislipType.DATA) || next.is(HislipType.DATA_END)) {
        if (isAwaited(next)) {
          replyBegun = true;
          return next;
        }
        LOG.debug("{}: {} bytes of a late reply", resource, next.payloadBytes());
      } else if (next.is(HislipType.INTERRUPTED)) {
        endInterruption(deadline);
      } else {
        channels.requireNoError(next, channel, deadline);
        throw channels.outOfPlace(next, "a reply");
      }
    }
  }

  /** Whether a piece belongs to the reply to the newest message. */
  private boolean isAwaited(HislipHeader next) {
    boolean last = next.is(HislipType.DATA_END);
    boolean stillGivenUp = replyGivenUp;
    replyGivenUp &= !last;
    if (interruptionsAhead > 0) {
      return false;
    }
    if (overlapped) {
      return !stillGivenUp;
    }
    if (next.parameter() == ids.last()) {
      replyGivenUp = false;
      return true;
    }
    return !last && next.parameter() == HislipMessageIds.UNKNOWN && !stillGivenUp;
  }

  /** What is left of a reply is nobody's once a new message goes out. */
  private void giveUpReply() {
    boolean inItsLastPiece = piece != null && piece.is(HislipType.DATA_END);
    replyGivenUp = replyGivenUp || (replyBegun && !inItsLastPiece);
    replyBegun = false;
    piece = null;
  }

  /** IVI-6.1 3.1.2: Interrupted and AsyncInterrupted come in pairs, either of them first. */
  private void endInterruption(Deadline deadline) {
    if (interruptionsAhead > 0) {
      interruptionsAhead--;
    } else {
      nextAsynchronous(HislipType.ASYNC_INTERRUPTED, deadline);
    }
    replyBegun = false;
    replyGivenUp = false;
  }

  private HislipHeader nextAsynchronous(HislipType awaited, Deadline deadline) {
    HislipChannel channel = channels.asynchronous();
    while (true) {
      HislipHeader next = channel.next(deadline);
      if (next.is(awaited)) {
        return next;
      }
      if (next.is(HislipType.ASYNC_INTERRUPTED)) {
        interruptionsAhead++;
      } else if (next.is(HislipType.ASYNC_STATUS_RESPONSE)) {
        statusesOwed--;
      } else if (!next.is(HislipType.ASYNC_SERVICE_REQUEST)) {
        statusesOwed -= next.is(HislipType.ERROR) && statusesOwed > 0 ? 1 : 0;
        channels.requireNoError(next, channel, deadline);
        throw channels.outOfPlace(next, awaited.name());
      }
    }
  }

  private int takeReplyDelivered() {
    int control = replyDelivered ? 1 : 0;
    replyDelivered = false;
    return control;
  }

  private void requireInStep() {
    if (isOutOfStep()) {
      throw new LinkException(
          resource + " took only half of the message before: clear the link, or connect again");
    }
  }
}

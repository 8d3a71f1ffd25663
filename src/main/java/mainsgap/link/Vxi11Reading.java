package mainsgap.link;

import java.nio.ByteBuffer;
import mainsgap.waiting.Deadline;

/**
 * The message that an instrument sends, over as many calls as that takes. What a call brings is
 * handed on as it comes; no more is ever asked for, or kept, than a fixed amount.
 */
final class Vxi11Reading {
  /** Few calls for a long record, and little to lose where one fails. */
  static final int MOST_BYTES_ASKED = 256 * 1024;

  private static final ByteBuffer NOTHING = ByteBuffer.allocate(0);

  private final ResourceName resource;
  private final Vxi11Core core;
  private boolean asked;
  private int xid;
  private boolean replying;
  private int left;
  private boolean endsMessage;
  private ByteBuffer held = NOTHING;

  Vxi11Reading(ResourceName resource, Vxi11Core core) {
    this.resource = resource;
    this.core = core;
  }

  /** At least one byte, or the end of the message. */
  Received read(ByteBuffer into, Deadline deadline) {
    if (held.hasRemaining()) {
      return fromHeld(into);
    }
    while (!replying) {
      beginReply(deadline);
      if (left == 0) {
        endReply(deadline);
        if (endsMessage) {
          return new Received(0, true);
        }
        if (deadline.hasPassed()) {
          throw silent();
        }
      }
    }
    return take(into, deadline);
  }

  /** Takes what is under way off the connection, so that another call can go over it. */
  void holdRest(Deadline deadline) {
    if (asked) {
      try {
        beginReply(deadline);
      } catch (LinkTimeoutException e) {
        if (asked) {
          throw e;
        }
        return; // the instrument had nothing to say
      }
    }
    if (replying) {
      ByteBuffer rest = ByteBuffer.allocate(left);
      while (rest.hasRemaining()) {
        Received unused = take(rest, deadline);
      }
      if (replying) {
        endReply(deadline);
      }
      held = rest.flip();
    }
  }

  /** A new message makes an instrument drop the one that it was sending. */
  void drop() {
    asked = false;
    replying = false;
    held = NOTHING;
  }

  private void beginReply(Deadline deadline) {
    if (!asked) {
      xid = core.askForData(MOST_BYTES_ASKED, deadline);
      asked = true;
    }
    core.calls().await(xid, deadline);
    asked = false;
    int error = core.calls().decode(deadline, RpcRecords::xdrDecodeInt);
    int reasons = core.calls().decode(deadline, RpcRecords::xdrDecodeInt);
    left = core.calls().decode(deadline, RpcRecords::xdrDecodeInt);
    if (left < 0 || left > MOST_BYTES_ASKED) {
      throw core.calls()
          .wrong(
              "it claims "
                  + Integer.toUnsignedString(left)
                  + " bytes of data where at most "
                  + MOST_BYTES_ASKED
                  + " were asked for");
    }
    // VXI-11 rule B.6.27: what came before the instrument's time was over comes with that error
    if (left == 0 || Vxi11Error.of(error) != Vxi11Error.TIMED_OUT) {
      Vxi11Error.check(error, resource, "send data");
    }
    replying = true;
    endsMessage = (reasons & Vxi11Calls.REASONS_OF_END) != 0;
  }

  private Received take(ByteBuffer into, Deadline deadline) {
    if (!into.hasRemaining()) {
      return new Received(0, false);
    }
    int bytes = core.calls().decode(deadline, reply -> reply.decodeSome(into, left));
    left -= bytes;
    if (left == 0) {
      endReply(deadline);
    }
    return new Received(bytes, left == 0 && endsMessage);
  }

  private void endReply(Deadline deadline) {
    replying = false;
    boolean unused =
        core.calls()
            .decode(
                deadline,
                reply -> {
                  reply.endDecoding();
                  return true;
                });
  }

  private Received fromHeld(ByteBuffer into) {
    int bytes = Math.min(held.remaining(), into.remaining());
    into.put(held.slice().limit(bytes));
    held.position(held.position() + bytes);
    return new Received(bytes, !held.hasRemaining() && endsMessage);
  }

  private LinkTimeoutException silent() {
    return new LinkTimeoutException(resource + " sent nothing in the time allowed");
  }
}

package mainsgap.link;

import java.time.Duration;
import java.util.OptionalInt;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;

/** An instrument whose endpoints are at hand: the framing is ours. */
final class BulkUsbtmc implements UsbtmcDevice {
  static final int INITIATE_CLEAR = 5;
  static final int CHECK_CLEAR_STATUS = 6;
  static final int READ_STATUS_BYTE = 128;

  static final int SUCCESS = 1;
  static final int PENDING = 2;

  private static final int FIRST_STATUS_TAG = 2;
  private static final int LAST_STATUS_TAG = 127;
  private static final int STATUS_NOTICE = 0x80;

  /** More notices than these, none of them the one that was asked for, are a fault. */
  private static final int MOST_NOTICES = 16;

  private static final Duration LOOK = Duration.ofMillis(50);

  private final UsbPipes pipes;
  private final Clock clock;
  private final byte[] piece;
  private int tag;
  private int statusTag = LAST_STATUS_TAG;
  private boolean knowsStatus;

  /** What was asked for and has not come whole. */
  private @Nullable UsbtmcReply awaited;

  /**
   * Takes over the pipes.
   *
   * @param mostBytes the most that {@link #receive} will be asked for
   */
  BulkUsbtmc(UsbPipes pipes, int mostBytes, Clock clock) {
    this.pipes = pipes;
    this.clock = clock;
    this.knowsStatus = pipes.kind().usb488();
    this.piece = new byte[wholePackets(UsbtmcFrames.HEADER_BYTES + UsbtmcFrames.padded(mostBytes))];
  }

  @Override
  public void send(byte[] message, int timeoutMillis) throws UsbFault {
    if (awaited != null) {
      clear(timeoutMillis); // a new message may not cross a reply
    }
    out(UsbtmcFrames.message(nextTag(), message, 0, message.length, true), timeoutMillis);
  }

  @Override
  public Received receive(byte[] into, int timeoutMillis) throws UsbFault {
    UsbtmcReply reply = awaited;
    if (reply == null) {
      reply = new UsbtmcReply(nextTag(), into);
      out(UsbtmcFrames.request(tag, into.length), timeoutMillis);
      awaited = reply;
    }
    try {
      take(reply, timeoutMillis);
    } catch (UsbFault e) {
      if (e.kind() != UsbFault.Kind.TIMEOUT) {
        awaited = null;
      }
      throw e;
    }
    awaited = null;
    return new Received(reply.bytes(), reply.endsMessage());
  }

  /** The instrument still has the request: the next wait is for its answer. */
  @Override
  public boolean resumes() {
    return true;
  }

  @Override
  public OptionalInt statusByte(int timeoutMillis) throws UsbFault {
    if (!knowsStatus) {
      return OptionalInt.empty();
    }
    statusTag = statusTag == LAST_STATUS_TAG ? FIRST_STATUS_TAG : statusTag + 1;
    byte[] answer = new byte[3];
    try {
      control(READ_STATUS_BYTE, statusTag, answer, timeoutMillis);
    } catch (UsbFault e) {
      if (e.kind() == UsbFault.Kind.STALLED || e.kind() == UsbFault.Kind.UNSUPPORTED) {
        knowsStatus = false;
        return OptionalInt.empty();
      }
      throw e;
    }
    if (answer[0] != SUCCESS) {
      throw refused("the status byte", answer[0]);
    }
    if (answer[1] != statusTag) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "it answered the status request " + answer[1] + " where " + statusTag + " was asked");
    }
    return OptionalInt.of(
        pipes.kind().interruptIn() == 0 ? answer[2] & 0xFF : noticedStatus(timeoutMillis));
  }

  @Override
  public void clear(int timeoutMillis) throws UsbFault {
    awaited = null;
    byte[] begun = new byte[1];
    control(INITIATE_CLEAR, 0, begun, timeoutMillis);
    if (begun[0] != SUCCESS) {
      throw refused("a device clear", begun[0]);
    }
    byte[] state = {PENDING, 0};
    for (long left = timeoutMillis; state[0] == PENDING; left -= LOOK.toMillis()) {
      if (left <= 0) {
        throw new UsbFault(UsbFault.Kind.TIMEOUT, "the device clear does not end");
      }
      control(CHECK_CLEAR_STATUS, 0, state, timeoutMillis);
      if (state[0] == PENDING) {
        awaitClear((state[1] & 1) != 0, timeoutMillis);
      }
    }
    if (state[0] != SUCCESS) {
      throw refused("a device clear", state[0]);
    }
    pipes.clearHaltOut();
  }

  @Override
  public void close() {
    pipes.close();
  }

  /** Reads the first packet, which has the header, and then no more than it owes. */
  private void take(UsbtmcReply reply, int timeoutMillis) throws UsbFault {
    boolean passedOver = false;
    while (!reply.isWhole()) {
      int wanted = reply.isEmpty() ? pipes.kind().packetBytes() : wholePackets(reply.owedBytes());
      int came = pipes.in(piece, wanted, timeoutMillis);
      if (came == 0 && reply.isEmpty() && !passedOver) {
        passedOver = true; // the empty packet that ends the transfer before
        continue;
      }
      reply.take(piece, came);
      boolean ended = came % pipes.kind().packetBytes() != 0 || came == 0;
      if (ended && !reply.isWhole()) {
        throw new UsbFault(UsbFault.Kind.OTHER, "the transfer ended with " + reply.progress());
      }
    }
  }

  /** The instrument first wants to be read empty, or takes its time. */
  private void awaitClear(boolean holdsData, int timeoutMillis) throws UsbFault {
    if (holdsData) {
      pipes.in(piece, piece.length, timeoutMillis);
      return;
    }
    try {
      clock.pause(LOOK, new StopRequest());
    } catch (StoppedException e) {
      // an interrupt only makes the looks come faster, and they are counted
    }
  }

  /** The status byte comes apart from the answer, perhaps behind requests for service. */
  private int noticedStatus(int timeoutMillis) throws UsbFault {
    byte[] notice = new byte[2];
    for (int i = 0; i < MOST_NOTICES; i++) {
      int came = pipes.interrupt(notice, timeoutMillis);
      if (came == 2 && (notice[0] & 0xFF) == (STATUS_NOTICE | statusTag)) {
        return notice[1] & 0xFF;
      }
    }
    throw new UsbFault(UsbFault.Kind.OTHER, "the status byte that was asked for does not come");
  }

  private void out(byte[] transfer, int timeoutMillis) throws UsbFault {
    int taken = pipes.out(transfer, timeoutMillis);
    if (taken != transfer.length) {
      throw new UsbFault(
          UsbFault.Kind.OTHER, "it took " + taken + " of " + transfer.length + " bytes");
    }
  }

  private void control(int request, int value, byte[] answer, int timeoutMillis) throws UsbFault {
    int came = pipes.control(request, value, answer, timeoutMillis);
    if (came != answer.length) {
      throw new UsbFault(
          UsbFault.Kind.OTHER,
          "it answered the request "
              + request
              + " with "
              + came
              + " of "
              + answer.length
              + " bytes");
    }
  }

  private int nextTag() {
    tag = UsbtmcFrames.tagAfter(tag);
    return tag;
  }

  private int wholePackets(int bytes) {
    int packet = pipes.kind().packetBytes();
    return (bytes + packet - 1) / packet * packet;
  }

  private static UsbFault refused(String what, byte status) {
    return new UsbFault(
        UsbFault.Kind.OTHER, "it refused " + what + " with the status " + (status & 0xFF));
  }
}

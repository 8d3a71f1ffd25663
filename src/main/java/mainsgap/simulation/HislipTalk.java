package mainsgap.simulation;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import mainsgap.link.HislipFault;
import mainsgap.link.HislipHeader;
import mainsgap.link.HislipType;
import mainsgap.simulation.HislipWire.Message;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;

/**
 * One HiSLIP session: a thread for messages and replies, another for status and device clear, which
 * get through meanwhile.
 */
final class HislipTalk {
  private static final int VENDOR = 'M' << 8 | 'G';
  private static final int FIRST_ID = 0xFFFFFF00;
  private static final int MESSAGE_AVAILABLE = 1 << 4;
  private static final long MOST_MESSAGE_BYTES = 0x100000;

  private final Instrument instrument;
  private final AnswerWriter answers;
  private final HislipWire synchronous;
  private final Socket synchronousSocket;
  private final ByteArrayOutputStream message = new ByteArrayOutputStream();
  private volatile @Nullable HislipWire asynchronous;
  private volatile @Nullable Socket asynchronousSocket;
  private volatile int mostPayloadBytes = 1024;
  private volatile boolean clearing;
  private volatile boolean overlapped;
  private volatile boolean replyEndSent;
  private volatile boolean replyWaits;
  private volatile int newestId = FIRST_ID - 2;
  private int nextReplyId = FIRST_ID;
  private boolean overrun;

  HislipTalk(Instrument instrument, FaultSwitch faults, HislipWire synchronous, Socket socket) {
    this.instrument = instrument;
    this.answers = new AnswerWriter(faults);
    this.synchronous = synchronous;
    this.synchronousSocket = socket;
  }

  /** Answers until the client goes, the bench closes, or a fault closes the connection. */
  void answerSynchronous() throws IOException {
    try {
      boolean open = true;
      while (open) {
        Message next = synchronous.next();
        HislipHeader header = next.header();
        if (asynchronous == null) {
          synchronous.tell(HislipFault.NOT_BOTH_CHANNELS);
          open = false;
        } else if (header.is(HislipType.DEVICE_CLEAR_COMPLETE)) {
          finishClear(header.controlBit(0));
        } else if (header.is(HislipType.DATA) || header.is(HislipType.DATA_END)) {
          open = clearing || take(next);
        } else if (header.is(HislipType.TRIGGER)) {
          begin(header);
        } else {
          synchronous.tell(HislipFault.UNKNOWN_TYPE);
        }
      }
    } catch (StoppedException e) {
      // the bench closes, and the connection with it
      Thread.currentThread().interrupt();
    }
  }

  /**
   * Answers what comes on the second connection until the client goes. The session is open before
   * the client hears that it is: its first message may come on the other connection at once.
   */
  void answerAsynchronous(HislipWire wire, Socket socket) throws IOException {
    asynchronousSocket = socket;
    asynchronous = wire;
    wire.send(HislipType.ASYNC_INITIALIZE_RESPONSE, 0, VENDOR);
    while (true) {
      Message next = wire.next();
      HislipHeader header = next.header();
      if (header.is(HislipType.ASYNC_STATUS_QUERY)) {
        wire.send(HislipType.ASYNC_STATUS_RESPONSE, status(header), 0);
      } else if (header.is(HislipType.ASYNC_DEVICE_CLEAR)) {
        clearing = true;
        wire.send(HislipType.ASYNC_DEVICE_CLEAR_ACKNOWLEDGE, 0, 0);
      } else if (header.is(HislipType.ASYNC_MAXIMUM_MESSAGE_SIZE) && next.payload().length == 8) {
        agreeOnSize(wire, ByteBuffer.wrap(next.payload()).getLong());
      } else if (header.is(HislipType.ASYNC_REMOTE_LOCAL_CONTROL)) {
        wire.send(HislipType.ASYNC_REMOTE_LOCAL_RESPONSE, 0, 0);
      } else {
        wire.tell(HislipFault.UNKNOWN_TYPE);
      }
    }
  }

  /** Closes both connections. */
  void end() throws IOException {
    synchronousSocket.close();
    Socket other = asynchronousSocket;
    if (other != null) {
      other.close();
    }
  }

  /** Takes a piece of a message, and answers behind the last; whether the session stays open. */
  private boolean take(Message piece) throws IOException {
    begin(piece.header());
    overrun |=
        !piece.isWhole() || message.size() + piece.payload().length > HislipWire.LONGEST_PAYLOAD;
    if (!overrun) {
      message.writeBytes(piece.payload());
    }
    if (!piece.header().is(HislipType.DATA_END)) {
      return true;
    }
    String whole = message.toString(StandardCharsets.US_ASCII);
    message.reset();
    if (overrun) {
      overrun = false;
      instrument.overrun();
      return true;
    }
    return answer(instrument.handle(whole.strip()));
  }

  /** IVI-6.1 3.1.1: a client that took no reply, or one that there was not, interrupts. */
  private void begin(HislipHeader header) {
    if (!overlapped && replyEndSent != header.controlBit(0)) {
      instrument.interrupted();
    }
    replyEndSent = false;
    replyWaits = false;
    newestId = header.parameter();
  }

  private boolean answer(List<Reply> replies) throws IOException {
    if (!overlapped && !replies.isEmpty() && !clearing && synchronous.hasMore()) {
      interrupt();
      return true;
    }
    try (HislipReply reply = new HislipReply(this::sendPiece, mostPayloadBytes)) {
      AnswerWriter.Sent sent = answers.write(replies, reply);
      if (sent == AnswerWriter.Sent.WHOLE) {
        reply.end();
      } else {
        reply.flush();
      }
      return sent != AnswerWriter.Sent.BROKEN_OFF;
    }
  }

  /** IVI-6.1 3.1.1: a reply that a new message overtook is thrown away. */
  private void interrupt() throws IOException {
    instrument.interrupted();
    HislipWire other = asynchronous;
    if (other != null) {
      other.send(HislipType.ASYNC_INTERRUPTED, 0, 0);
    }
    synchronous.send(HislipType.INTERRUPTED, 0, newestId);
  }

  /** Sends a piece of a reply, unless a device clear has made it void. */
  private void sendPiece(byte[] bytes, int length, boolean last) throws IOException {
    if (clearing) {
      return;
    }
    HislipType type = last ? HislipType.DATA_END : HislipType.DATA;
    int id = overlapped ? nextReplyId : newestId;
    nextReplyId += 2;
    replyWaits = true;
    replyEndSent |= last;
    synchronous.send(HislipHeader.of(type, 0, id, length), bytes, length);
  }

  private void finishClear(boolean wantsOverlapped) throws IOException {
    message.reset();
    overrun = false;
    overlapped = wantsOverlapped;
    replyEndSent = false;
    replyWaits = false;
    newestId = FIRST_ID - 2;
    nextReplyId = FIRST_ID;
    clearing = false;
    synchronous.send(HislipType.DEVICE_CLEAR_ACKNOWLEDGE, wantsOverlapped ? 1 : 0, 0);
  }

  /** IVI-6.1 6.14: no message is available to a client that took it, or speaks of another one. */
  private int status(HislipHeader query) {
    boolean taken = query.controlBit(0);
    if (taken) {
      replyEndSent = false;
      replyWaits = false;
    }
    boolean available = replyWaits && (overlapped || query.parameter() == newestId);
    return available ? instrument.statusByte() | MESSAGE_AVAILABLE : instrument.statusByte();
  }

  private void agreeOnSize(HislipWire wire, long clientTakesBytes) throws IOException {
    long most =
        clientTakesBytes < 0 ? MOST_MESSAGE_BYTES : Math.min(clientTakesBytes, MOST_MESSAGE_BYTES);
    mostPayloadBytes = (int) Math.max(1, most - HislipHeader.BYTES);
    byte[] size = ByteBuffer.allocate(Long.BYTES).putLong(HislipWire.LONGEST_PAYLOAD).array();
    HislipType type = HislipType.ASYNC_MAXIMUM_MESSAGE_SIZE_RESPONSE;
    wire.send(HislipHeader.of(type, 0, 0, size.length), size, size.length);
  }
}

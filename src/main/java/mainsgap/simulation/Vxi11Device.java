package mainsgap.simulation;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;

/**
 * One client's link to an instrument: the message that comes in pieces, and the answer that goes
 * out in pieces. One client's thread owns it; only {@link #abort} may come from another.
 */
final class Vxi11Device {
  static final int REASON_REQUESTED = 1;
  static final int REASON_CHARACTER = 2;
  static final int REASON_END = 4;
  private static final int LONGEST_MESSAGE = 64 * 1024;
  private static final int MESSAGE_AVAILABLE = 1 << 4;
  private static final Duration LONGEST_WAIT = Duration.ofMinutes(10);

  private final Instrument instrument;
  private final FaultSwitch faults;
  private final Clock clock;
  private final ByteArrayOutputStream message = new ByteArrayOutputStream();
  private byte[] answer = new byte[0];
  private AnswerWriter.Sent ending = AnswerWriter.Sent.NOTHING;
  private int sent;
  private boolean tooLong;
  private volatile StopRequest waitEnd = new StopRequest();

  Vxi11Device(Instrument instrument, FaultSwitch faults, Clock clock) {
    this.instrument = instrument;
    this.faults = faults;
    this.clock = clock;
  }

  /**
   * A part of an answer.
   *
   * @param from where the bytes are
   * @param offset of the first
   * @param bytes how many
   * @param reasons why it ends there
   */
  @SuppressWarnings("ArrayRecordComponent") // carried to the wire, never compared
  record Part(byte[] from, int offset, int bytes, int reasons) {}

  /** Takes a piece of a message; what an NL or the end completes is carried out. */
  void take(byte[] piece, boolean ends) throws IOException {
    for (byte b : piece) {
      if (b == '\n') {
        carryOut();
      } else if (message.size() < LONGEST_MESSAGE) {
        message.write(b);
      } else {
        tooLong = true;
      }
    }
    if (ends && message.size() > 0) {
      carryOut();
    }
  }

  private void carryOut() throws IOException {
    String said = message.toString(StandardCharsets.US_ASCII);
    message.reset();
    if (isAnswering()) {
      instrument.interrupted();
    }
    dropAnswer();
    if (tooLong) {
      tooLong = false;
      instrument.overrun();
      return;
    }
    ByteArrayOutputStream wire = new ByteArrayOutputStream();
    ending = new AnswerWriter(faults).write(instrument.handle(said), wire);
    answer = wire.toByteArray();
  }

  private void dropAnswer() {
    answer = new byte[0];
    ending = AnswerWriter.Sent.NOTHING;
    sent = 0;
  }

  /** Whether bytes of an answer wait to be read. */
  boolean isAnswering() {
    return sent < answer.length;
  }

  /**
   * The next part of the answer.
   *
   * @param end a byte to stop behind, or -1
   */
  Part next(int mostBytes, int end) {
    int offset = sent;
    int bytes = Math.min(mostBytes, answer.length - offset);
    if (faults.now() == ScopeFault.SLOW) {
      bytes = Math.min(bytes, 1);
    }
    int reasons = bytes == mostBytes ? REASON_REQUESTED : 0;
    for (int i = 0; end >= 0 && i < bytes; i++) {
      if (answer[offset + i] == (byte) end) {
        bytes = i + 1;
        reasons = REASON_CHARACTER | (bytes == mostBytes ? REASON_REQUESTED : 0);
      }
    }
    sent += bytes;
    if (sent == answer.length && ending == AnswerWriter.Sent.WHOLE) {
      reasons |= REASON_END;
    }
    return new Part(answer, offset, bytes, reasons);
  }

  /**
   * Waits as long as the client does; no answer can come meanwhile.
   *
   * @return whether the wait was aborted
   * @throws IOException where a fault closes the connection here
   */
  boolean waitInVain(long millis) throws IOException {
    if (ending == AnswerWriter.Sent.BROKEN_OFF) {
      throw new IOException("closed in mid block, as the fault wants it");
    }
    StopRequest end = new StopRequest();
    waitEnd = end;
    try {
      clock.pause(Duration.ofMillis(Math.min(millis, LONGEST_WAIT.toMillis())), end);
      return false;
    } catch (StoppedException e) {
      return true;
    }
  }

  /** Ends a wait of the owner. */
  void abort() {
    waitEnd.request();
  }

  /** Throws away what was said and not answered. */
  void clear() {
    message.reset();
    tooLong = false;
    dropAnswer();
  }

  int statusByte() {
    return instrument.statusByte() | (isAnswering() ? MESSAGE_AVAILABLE : 0);
  }
}

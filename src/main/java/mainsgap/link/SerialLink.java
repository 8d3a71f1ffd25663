package mainsgap.link;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicBoolean;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;

/**
 * A serial line: no end mark, no status byte, and no device clear, for a BREAK means something else
 * on each instrument that knows it, and an error on the others.
 */
final class SerialLink implements Link {
  /** How long a line is silent before nothing of an old reply is taken to be under way. */
  private static final int SILENT_SLICES = 2;

  /** Half of what the line could carry: instruments rest between the bytes. */
  private static final int SHARE_OF_FULL_SPEED = 2;

  private static final byte[] NL = {'\n'};

  private final ResourceName.Serial resource;
  private final SerialLine line;
  private final byte[] slice = new byte[16 * 1024];

  /** What was read and not yet asked for; in read mode. */
  private final ByteBuffer pending = ByteBuffer.wrap(slice).limit(0);

  /** The instrument holds the beginning of a message that never got its end. */
  private boolean cutShort;

  private SerialLink(ResourceName.Serial resource, SerialLine line) {
    this.resource = resource;
    this.line = line;
  }

  static SerialLink open(ResourceName.Serial resource) {
    return new SerialLink(resource, SerialPorts.open(resource));
  }

  @Override
  public ResourceName resource() {
    return resource;
  }

  @Override
  public void write(byte[] message, Deadline deadline) {
    byte[] bytes = terminated(message);
    StopRequest givenUp = new StopRequest();
    AtomicBoolean out = new AtomicBoolean();
    Thread writer = new Thread(() -> out.set(line.write(bytes, givenUp)), "serial-write");
    writer.setDaemon(true);
    writer.start();
    if (!Joined.within(writer, deadline.remaining())) {
      cutShort = true;
      givenUp.request();
      line.discard();
      throw line.isClosed() ? closedHere() : takesNoMore();
    }
    if (!out.get()) {
      throw lost();
    }
  }

  @Override
  public Received read(ByteBuffer into, Deadline deadline) {
    if (!pending.hasRemaining()) {
      receive(deadline);
    }
    int bytes = Math.min(pending.remaining(), into.remaining());
    into.put(pending.slice().limit(bytes));
    pending.position(pending.position() + bytes);
    return new Received(bytes, false);
  }

  @Override
  public boolean marksMessageEnd() {
    return false;
  }

  @Override
  public int slowestBytesPerSecond() {
    int half = resource.settings().bytesPerSecond() / SHARE_OF_FULL_SPEED;
    return Math.max(1, Math.min(Link.super.slowestBytesPerSecond(), half));
  }

  @Override
  public OptionalInt statusByte(Deadline deadline) {
    return OptionalInt.empty();
  }

  /**
   * Ends a message that was cut short, then throws away what comes until the line falls silent.
   * What the instrument has not sent yet it drops by itself at the next message, as IEEE 488.2
   * wants it.
   */
  @Override
  public void clear(Deadline deadline) {
    pending.limit(0);
    if (cutShort) {
      write(NL, deadline);
      cutShort = false;
    }
    int silent = 0;
    while (silent < SILENT_SLICES) {
      int bytes = line.read(slice);
      if (bytes < 0) {
        throw lost();
      }
      silent = bytes == 0 ? silent + 1 : 0;
      if (silent < SILENT_SLICES && deadline.hasPassed()) {
        throw new LinkTimeoutException(
            resource
                + " goes on sending what nobody wants any more: wait until it has finished, or"
                + " switch the instrument off and on");
      }
    }
  }

  @Override
  public void close() {
    line.close();
  }

  private void receive(Deadline deadline) {
    long slices = 1 + deadline.remaining().toMillis() / SerialLine.SLICE_MILLIS;
    int bytes = line.read(slice);
    for (long i = 1; bytes == 0 && i < slices && !deadline.hasPassed(); i++) {
      bytes = line.read(slice);
    }
    if (bytes < 0) {
      throw lost();
    }
    if (bytes == 0) {
      throw new LinkTimeoutException(resource + " sent nothing in the time allowed");
    }
    pending.clear().limit(bytes);
  }

  private byte[] terminated(byte[] message) {
    int length = message.length;
    boolean replace =
        resource.settings().terminator() == SerialSettings.Terminator.CR_NL
            && length > 0
            && message[length - 1] == '\n'
            && (length == 1 || message[length - 2] != '\r');
    if (!replace) {
      return message;
    }
    byte[] ended = Arrays.copyOf(message, length + 1);
    ended[length - 1] = '\r';
    ended[length] = '\n';
    return ended;
  }

  private LinkTimeoutException takesNoMore() {
    return new LinkTimeoutException(
        resource
            + " takes no more data: check the cable, and that the instrument has the same flow"
            + " control");
  }

  private LinkClosedException lost() {
    return line.isClosed()
        ? closedHere()
        : new LinkClosedException(
            resource
                + " lost the serial port: the adapter may have been pulled out; plug it in and"
                + " connect again");
  }

  private LinkClosedException closedHere() {
    return new LinkClosedException(resource + " was closed by this program");
  }
}

package mainsgap.link;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import mainsgap.waiting.ManualClock;

/**
 * The kernel's driver with an instrument behind it, as far as its source says how it behaves. A
 * call that waits turns the clock on by its time-out.
 */
final class FakeUsbtmcKernel implements UsbtmcKernel {
  static final int EIO = 5;
  static final int ENODEV = 19;
  static final int ENOTTY = 25;
  static final int EPIPE = 32;
  static final int EPROTO = 71;
  static final int ETIMEDOUT = 110;

  /** One answer of the driver to a read: the bytes, and whether they end the message. */
  static final class Transfer {
    private final byte[] bytes;
    private final boolean ends;

    Transfer(byte[] bytes, boolean ends) {
      this.bytes = bytes;
      this.ends = ends;
    }
  }

  final List<String> written = new ArrayList<>();
  final List<Integer> timeouts = new ArrayList<>();
  final Deque<Transfer> transfers = new ArrayDeque<>();
  final Set<Long> unknownRequests = new HashSet<>();
  final ManualClock clock;
  int clears;
  int reads;
  int statusLooks;
  int opened;
  int closed;
  int errnoOfAll;
  int errnoOfWrites;
  int errnoOfStatus;
  int errnoWhenEmpty = ETIMEDOUT;
  int extraBytes;
  boolean keepsAvailability = true;
  int silentLooks;
  Function<String, List<Transfer>> instrument = message -> List.of();
  Runnable duringRead = () -> {};
  private int timeoutMillis = 5000;
  private boolean ended;

  FakeUsbtmcKernel(ManualClock clock) {
    this.clock = clock;
  }

  /** Answers every message with the text, in one transfer. */
  void answers(String text) {
    instrument = message -> List.of(new Transfer(LoopbackPeer.ascii(text), true));
  }

  /** A reply in transfers of at most {@code size} bytes. */
  static List<Transfer> inPieces(byte[] reply, int size) {
    List<Transfer> pieces = new ArrayList<>();
    for (int at = 0; at < reply.length; at += size) {
      int end = Math.min(reply.length, at + size);
      pieces.add(new Transfer(Arrays.copyOfRange(reply, at, end), end == reply.length));
    }
    return pieces;
  }

  @Override
  public int open(String path) throws Failed {
    check(errnoOfAll);
    opened++;
    return 7;
  }

  @Override
  public int write(int file, byte[] bytes) throws Failed {
    check(errnoOfAll);
    if (errnoOfWrites == ETIMEDOUT) {
      clock.advance(Duration.ofMillis(timeoutMillis));
    }
    check(errnoOfWrites);
    String message = new String(bytes, StandardCharsets.ISO_8859_1);
    written.add(message);
    transfers.clear();
    transfers.addAll(instrument.apply(message));
    return bytes.length;
  }

  @Override
  public int read(int file, byte[] into) throws Failed {
    reads++;
    duringRead.run();
    check(errnoOfAll);
    Transfer next = transfers.poll();
    if (next == null) {
      clock.advance(Duration.ofMillis(timeoutMillis));
      throw new Failed(errnoWhenEmpty);
    }
    int bytes = Math.min(into.length, next.bytes.length);
    System.arraycopy(next.bytes, 0, into, 0, bytes);
    ended = next.ends;
    return bytes + extraBytes;
  }

  @Override
  public void ioctl(int file, long request, byte[] argument) throws Failed {
    check(errnoOfAll);
    if (unknownRequests.contains(request)) {
      throw new Failed(ENOTTY);
    }
    if (request == KernelUsbtmc.SET_TIMEOUT) {
      timeoutMillis = ByteBuffer.wrap(argument).order(ByteOrder.nativeOrder()).getInt();
      timeouts.add(timeoutMillis);
    } else if (request == KernelUsbtmc.MSG_IN_ATTR) {
      argument[0] = (byte) (ended ? 1 : 0);
    } else if (request == KernelUsbtmc.READ_STB) {
      statusLooks++;
      check(errnoOfStatus);
      boolean available = keepsAvailability && !transfers.isEmpty() && silentLooks-- <= 0;
      argument[0] = (byte) (0x80 | (available ? 0x10 : 0));
    } else if (request == KernelUsbtmc.CLEAR) {
      clears++;
      transfers.clear();
    } else {
      throw new AssertionError("no such request: " + request);
    }
  }

  @Override
  public void close(int file) {
    closed++;
  }

  private static void check(int errno) throws Failed {
    if (errno != 0) {
      throw new Failed(errno);
    }
  }
}

package mainsgap.link;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.function.Function;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/**
 * The far side of the endpoints: an instrument that takes frames apart and answers each request
 * with a transfer, after the layout of USBTMC and apart from the code of the link. A packet is 64
 * bytes, and the transfer is over where one is shorter.
 */
final class FakeUsbInstrument implements UsbPipes {
  static final int PACKET = 64;
  static final int BULK_OUT = 0x01;
  static final int BULK_IN = 0x82;
  static final int INTERRUPT_IN = 0x83;

  /** What it answers a request with. */
  static final class Part {
    private final byte[] data;
    private final boolean ends;
    private final Function<byte[], byte[]> lie;

    Part(byte[] data, boolean ends) {
      this(data, ends, frame -> frame);
    }

    /** A part whose frame is changed on its way. */
    Part(byte[] data, boolean ends, Function<byte[], byte[]> lie) {
      this.data = data;
      this.ends = ends;
      this.lie = lie;
    }
  }

  final List<byte[]> framesOut = new ArrayList<>();
  final List<String> messages = new ArrayList<>();
  final Deque<Part> parts = new ArrayDeque<>();
  final Deque<byte[]> notices = new ArrayDeque<>();
  boolean endsTransfersWithEmptyPackets;
  boolean keepsAvailability = true;
  boolean gone;
  boolean goneWhenEmpty;
  boolean busy;
  UsbFault.@Nullable Kind controlFault;
  byte statusOfClear = 1;
  int pendingClears;
  boolean clearHoldsData;
  int statusTagShift;
  int haltsCleared;
  int clears;
  int closed;
  boolean usb488 = true;
  boolean hasInterrupt;
  Function<String, List<Part>> instrument = message -> List.of();
  private final Deque<byte[]> packets = new ArrayDeque<>();
  private final ByteArrayOutputStream incoming = new ByteArrayOutputStream();
  private int asked = -1;
  private int askedBytes;

  @Override
  public UsbtmcInterface kind() {
    return new UsbtmcInterface(
        0, usb488, BULK_OUT, BULK_IN, hasInterrupt ? INTERRUPT_IN : 0, PACKET);
  }

  /** Answers every message with the text in one transfer. */
  void answers(String text) {
    instrument = message -> List.of(new Part(LoopbackPeer.ascii(text), true));
  }

  @Override
  public int out(byte[] transfer, int timeoutMillis) throws UsbFault {
    check();
    if (busy) {
      throw new UsbFault(UsbFault.Kind.TIMEOUT, "time-out");
    }
    framesOut.add(transfer.clone());
    ByteBuffer frame = ByteBuffer.wrap(transfer).order(ByteOrder.LITTLE_ENDIAN);
    if (transfer.length % 4 != 0 || (frame.get(1) ^ frame.get(2)) != -1 || frame.get(1) == 0) {
      throw new AssertionError("a bad frame: " + Arrays.toString(transfer));
    }
    if (frame.get(0) == 1) {
      incoming.write(transfer, 12, frame.getInt(4));
      if ((frame.get(8) & 1) != 0) {
        String message = incoming.toString(StandardCharsets.ISO_8859_1);
        incoming.reset();
        messages.add(message);
        parts.clear();
        packets.clear();
        parts.addAll(instrument.apply(message));
      }
    } else {
      asked = frame.get(1) & 0xFF;
      askedBytes = frame.getInt(4);
    }
    return transfer.length;
  }

  @Override
  public int in(byte[] into, int bytes, int timeoutMillis) throws UsbFault {
    check();
    if (packets.isEmpty() && asked >= 0 && !parts.isEmpty()) {
      answer(parts.remove());
    }
    int came = 0;
    while (came < bytes) {
      byte[] packet = packets.poll();
      if (packet == null) {
        if (came == 0) {
          gone |= goneWhenEmpty;
          check();
          rest(timeoutMillis);
          throw new UsbFault(UsbFault.Kind.TIMEOUT, "time-out");
        }
        return came;
      }
      if (packet.length > bytes - came) {
        throw new UsbFault(UsbFault.Kind.OTHER, "more came than was asked for");
      }
      System.arraycopy(packet, 0, into, came, packet.length);
      came += packet.length;
      if (packet.length < PACKET) {
        return came;
      }
    }
    return came;
  }

  @Override
  public int interrupt(byte[] into, int timeoutMillis) throws UsbFault {
    check();
    byte[] notice = notices.poll();
    if (notice == null) {
      throw new UsbFault(UsbFault.Kind.TIMEOUT, "time-out");
    }
    System.arraycopy(notice, 0, into, 0, notice.length);
    return notice.length;
  }

  @Override
  public int control(int request, int value, byte[] answer, int timeoutMillis) throws UsbFault {
    check();
    if (controlFault != null) {
      throw new UsbFault(controlFault, "no");
    }
    switch (request) {
      case 5 -> {
        clears++;
        parts.clear();
        packets.clear();
        incoming.reset();
        asked = -1;
        if (clearHoldsData) {
          packets.add(new byte[5]);
        }
        answer[0] = statusOfClear;
      }
      case 6 -> {
        boolean pending = pendingClears-- > 0 || !packets.isEmpty();
        answer[0] = (byte) (pending ? 2 : 1);
        answer[1] = (byte) (packets.isEmpty() ? 0 : 1);
      }
      case 128 -> status(value, answer);
      default -> throw new AssertionError("no such request: " + request);
    }
    return answer.length;
  }

  @Override
  public void clearHaltOut() {
    haltsCleared++;
  }

  @Override
  public void close() {
    closed++;
  }

  private void status(int tag, byte[] answer) {
    boolean available = keepsAvailability && (!parts.isEmpty() || !packets.isEmpty());
    byte status = (byte) (0x80 | (available ? 0x10 : 0));
    answer[0] = 1;
    answer[1] = (byte) (tag + statusTagShift);
    answer[2] = hasInterrupt ? 0 : status;
    if (hasInterrupt) {
      notices.add(new byte[] {(byte) 0x81, 0x40}); // a request for service goes before it
      notices.add(new byte[] {(byte) (0x80 | tag), status});
    }
  }

  /** Splits the answer into packets; what is more than was asked for waits for the next request. */
  private void answer(Part part) {
    byte[] now = Arrays.copyOf(part.data, Math.min(askedBytes, part.data.length));
    boolean all = now.length == part.data.length;
    if (!all) {
      parts.addFirst(
          new Part(
              Arrays.copyOfRange(part.data, now.length, part.data.length), part.ends, part.lie));
    }
    ByteBuffer frame =
        ByteBuffer.allocate(12 + (now.length + 3) / 4 * 4).order(ByteOrder.LITTLE_ENDIAN);
    frame.put((byte) 2).put((byte) asked).put((byte) ~asked).put((byte) 0).putInt(now.length);
    frame.put((byte) (all && part.ends ? 1 : 0)).put(12, now);
    byte[] sent = part.lie.apply(frame.array());
    for (int at = 0; at < sent.length; at += PACKET) {
      packets.add(Arrays.copyOfRange(sent, at, Math.min(sent.length, at + PACKET)));
    }
    if (sent.length % PACKET == 0 && endsTransfersWithEmptyPackets) {
      packets.add(new byte[0]);
    }
    asked = -1;
  }

  /** A wait for nothing lasts, though not as long as it would. */
  private static void rest(int timeoutMillis) {
    Clock.system().pause(Duration.ofMillis(Math.min(timeoutMillis, 20)), new StopRequest());
  }

  private void check() throws UsbFault {
    if (gone) {
      throw new UsbFault(UsbFault.Kind.GONE, "unplugged");
    }
  }
}

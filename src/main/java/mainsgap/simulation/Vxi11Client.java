package mainsgap.simulation;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** The core channel of one client: VXI-11 Rev 1.0, table C.1. Its links end with it. */
final class Vxi11Client {
  /** The most bytes of a message that one call may carry. */
  static final int LONGEST_PIECE = 64 * 1024;

  private static final int MOST_BYTES_A_READ = 1024 * 1024;
  private static final int FLAG_END = 0x08;
  private static final int FLAG_CHARACTER = 0x80;

  private static final int NO_ERROR = 0;
  private static final int INVALID_LINK = 4;
  private static final int PARAMETER = 5;
  private static final int NOT_SUPPORTED = 8;
  private static final int TIMED_OUT = 15;
  private static final int ABORTED = 23;

  private final Vxi11Links links;
  private final Set<Integer> own = ConcurrentHashMap.newKeySet();

  Vxi11Client(Vxi11Links links) {
    this.links = links;
  }

  Optional<RpcAnswer> answer(RpcCall call) throws IOException {
    RpcAnswer answer =
        switch (call.procedure()) {
          case 10 -> create(call);
          case 11 -> write(call);
          case 12 -> read(call);
          case 13 -> statusByte(call);
          case 15 -> clear(call);
          case 16, 17 -> RpcAnswer.numbers(call, errorOfLink(call.number())); // remote, local
          case 14, 18, 19, 20, 25, 26 -> RpcAnswer.numbers(call, NOT_SUPPORTED);
          case 22 -> RpcAnswer.numbers(call, NOT_SUPPORTED, 0); // a command: no data come back
          case 23 -> destroy(call);
          default -> null;
        };
    return Optional.ofNullable(answer);
  }

  /** Gives up the links that the client left behind. */
  void end() {
    own.forEach(links::remove);
  }

  private RpcAnswer create(RpcCall call) throws IOException {
    int unusedClient = call.number();
    boolean locked = call.number() != 0;
    int unusedLockTimeout = call.number();
    String device = new String(call.opaque(), StandardCharsets.US_ASCII);
    if (locked) {
      return RpcAnswer.numbers(call, NOT_SUPPORTED, 0, 0, 0);
    }
    Vxi11Links.Made made = links.make(device);
    if (made.error() == NO_ERROR) {
      own.add(made.id());
    }
    return RpcAnswer.numbers(call, made.error(), made.id(), links.abortPort(), LONGEST_PIECE);
  }

  private RpcAnswer write(RpcCall call) throws IOException {
    Optional<Vxi11Device> device = links.device(call.number());
    int unusedTimeout = call.number();
    int unusedLockTimeout = call.number();
    boolean ends = (call.number() & FLAG_END) != 0;
    byte[] piece = call.opaque();
    if (device.isEmpty()) {
      return RpcAnswer.numbers(call, INVALID_LINK, 0);
    }
    if (piece.length > LONGEST_PIECE) {
      return RpcAnswer.numbers(call, PARAMETER, 0);
    }
    device.get().take(piece, ends);
    return RpcAnswer.numbers(call, NO_ERROR, piece.length);
  }

  private RpcAnswer read(RpcCall call) throws IOException {
    Optional<Vxi11Device> found = links.device(call.number());
    int requested = call.number();
    long millis = Integer.toUnsignedLong(call.number());
    int unusedLockTimeout = call.number();
    boolean stopsAtCharacter = (call.number() & FLAG_CHARACTER) != 0;
    int character = call.number() & 0xFF;
    if (found.isEmpty()) {
      return RpcAnswer.data(call, INVALID_LINK, 0, new byte[0], 0, 0);
    }
    Vxi11Device device = found.get();
    if (!device.isAnswering()) {
      int error = device.waitInVain(millis) ? ABORTED : TIMED_OUT;
      return RpcAnswer.data(call, error, 0, new byte[0], 0, 0);
    }
    int most = requested < 0 ? MOST_BYTES_A_READ : Math.min(requested, MOST_BYTES_A_READ);
    Vxi11Device.Part part = device.next(most, stopsAtCharacter ? character : -1);
    return RpcAnswer.data(call, NO_ERROR, part.reasons(), part.from(), part.offset(), part.bytes());
  }

  private RpcAnswer statusByte(RpcCall call) throws IOException {
    return links
        .device(call.number())
        .map(device -> RpcAnswer.numbers(call, NO_ERROR, device.statusByte()))
        .orElseGet(() -> RpcAnswer.numbers(call, INVALID_LINK, 0));
  }

  private RpcAnswer clear(RpcCall call) throws IOException {
    Optional<Vxi11Device> device = links.device(call.number());
    device.ifPresent(Vxi11Device::clear);
    return RpcAnswer.numbers(call, device.isPresent() ? NO_ERROR : INVALID_LINK);
  }

  private RpcAnswer destroy(RpcCall call) throws IOException {
    int id = call.number();
    own.remove(id);
    return RpcAnswer.numbers(call, links.remove(id) ? NO_ERROR : INVALID_LINK);
  }

  private int errorOfLink(int id) {
    return links.device(id).isPresent() ? NO_ERROR : INVALID_LINK;
  }
}

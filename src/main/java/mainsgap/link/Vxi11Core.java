package mainsgap.link;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import mainsgap.link.RpcMessages.Procedure;
import mainsgap.waiting.Deadline;
import org.acplt.oncrpc.OncRpcException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The core channel of one instrument with one link on it, and the way to its abort channel. One
 * thread owns it; only {@link #close} may come from another.
 */
final class Vxi11Core {
  private static final Logger LOG = LoggerFactory.getLogger(Vxi11Core.class);

  /** Tells an instrument's log which client it was; nothing hangs on it. */
  private static final int CLIENT_ID = 0x1234;

  /** VXI-11 wants 1024 at least; a message is cut into no longer pieces than this. */
  private static final int LONGEST_PIECE_BYTES = 64 * 1024;

  /** The instrument's own time-out ends a little before ours, so that its answer still comes. */
  private static final Duration LONGEST_WAY_BACK = Duration.ofMillis(250);

  private static final int SHARE_FOR_WAY_BACK = 4;

  private final ResourceName.Vxi11 resource;
  private final RpcConnection calls;
  private final AtomicInteger lastXid;
  private final Created link;

  private Vxi11Core(
      ResourceName.Vxi11 resource, RpcConnection calls, AtomicInteger lastXid, Created link) {
    this.resource = resource;
    this.calls = calls;
    this.lastXid = lastXid;
    this.link = link;
  }

  /** What an instrument tells of a link that it made. */
  private record Created(int error, int id, int abortPort, int longestPieceBytes) {
    static Created from(RpcRecords reply) throws OncRpcException, IOException {
      return new Created(
          reply.xdrDecodeInt(), reply.xdrDecodeInt(), reply.xdrDecodeInt(), reply.xdrDecodeInt());
    }
  }

  /** Asks for the port where it must, connects, and has a link made. */
  static Vxi11Core open(ResourceName.Vxi11 resource, Deadline deadline) {
    AtomicInteger lastXid = new AtomicInteger();
    int port =
        resource.port() == ResourceName.Vxi11.ASK_PORTMAPPER
            ? askPortmapper(resource, lastXid, deadline)
            : resource.port();
    RpcConnection calls = RpcConnection.open(resource, port, lastXid, deadline);
    try {
      Created link =
          calls.call(
              Vxi11Calls.CREATE_LINK,
              Vxi11Calls.createLink(CLIENT_ID, resource.deviceName()),
              deadline,
              Created::from);
      Vxi11Error.check(link.error(), resource, "open " + resource.deviceName());
      if (link.longestPieceBytes() == 0) {
        throw calls.wrong("it takes messages of 0 bytes, where 1024 is the least");
      }
      return new Vxi11Core(resource, calls, lastXid, link);
    } catch (RuntimeException e) {
      calls.close();
      throw e;
    }
  }

  private static int askPortmapper(
      ResourceName.Vxi11 resource, AtomicInteger lastXid, Deadline deadline) {
    RpcConnection portmapper = RpcConnection.open(resource, Portmapper.PORT, lastXid, deadline);
    try {
      int answer =
          portmapper.call(
              Portmapper.GET_PORT,
              new Vxi11Calls.Arguments(
                  Portmapper.arguments(Vxi11Calls.CORE_PROGRAM, Vxi11Calls.VERSION),
                  Portmapper.ARGUMENT_BYTES),
              deadline,
              RpcRecords::xdrDecodeInt);
      return Portmapper.port(answer)
          .orElseThrow(
              () ->
                  new LinkException(
                      resource
                          + ": its portmapper knows no VXI-11 (port "
                          + Integer.toUnsignedString(answer)
                          + "): turn VXI-11 on at the instrument, or use another link"));
    } finally {
      portmapper.close();
    }
  }

  /** The most bytes of a message that go into one call. */
  int longestPieceBytes() {
    int claimed = link.longestPieceBytes();
    return claimed < 0 ? LONGEST_PIECE_BYTES : Math.min(claimed, LONGEST_PIECE_BYTES);
  }

  RpcConnection calls() {
    return calls;
  }

  /** Sends a piece of a message; how many of its bytes were taken. */
  int write(byte[] piece, int flags, Deadline deadline) {
    return calls.call(
        Vxi11Calls.DEVICE_WRITE,
        Vxi11Calls.write(link.id(), millis(deadline), flags, piece),
        deadline,
        reply -> {
          Vxi11Error.check(reply.xdrDecodeInt(), resource, "take a message");
          return reply.xdrDecodeInt();
        });
  }

  /** Asks for data; the number of the call, whose reply is still to be awaited. */
  int askForData(int mostBytes, Deadline deadline) {
    return calls.send(
        Vxi11Calls.DEVICE_READ, Vxi11Calls.read(link.id(), mostBytes, millis(deadline)), deadline);
  }

  int statusByte(Deadline deadline) {
    return calls.call(
        Vxi11Calls.DEVICE_READ_STATUS,
        Vxi11Calls.generic(link.id(), millis(deadline)),
        deadline,
        reply -> {
          Vxi11Error.check(reply.xdrDecodeInt(), resource, "tell its status byte");
          return reply.xdrDecodeInt() & 0xFF;
        });
  }

  void clear(Deadline deadline) {
    check(
        Vxi11Calls.DEVICE_CLEAR,
        Vxi11Calls.generic(link.id(), millis(deadline)),
        "clear its device",
        deadline);
  }

  /** Ends the call that the instrument is working on, over a connection of its own. */
  void abort(Deadline deadline) {
    int port =
        Portmapper.port(link.abortPort())
            .orElseThrow(() -> new LinkException(resource + " has no abort channel"));
    RpcConnection channel = RpcConnection.open(resource, port, lastXid, deadline);
    try {
      int error =
          channel.call(
              Vxi11Calls.DEVICE_ABORT,
              Vxi11Calls.link(link.id()),
              deadline,
              RpcRecords::xdrDecodeInt);
      Vxi11Error.check(error, resource, "abort its call");
    } finally {
      channel.close();
    }
  }

  /** Gives the link back: an instrument has few. */
  void destroyLink(Deadline deadline) {
    try {
      check(Vxi11Calls.DESTROY_LINK, Vxi11Calls.link(link.id()), "give up the link", deadline);
    } catch (LinkException e) {
      LOG.debug("{} kept its link: {}", resource, e.getMessage());
    }
  }

  void close() {
    calls.close();
  }

  private void check(
      Procedure procedure, Vxi11Calls.Arguments arguments, String attempt, Deadline deadline) {
    int error = calls.call(procedure, arguments, deadline, RpcRecords::xdrDecodeInt);
    Vxi11Error.check(error, resource, attempt);
  }

  /** At least 1: what 0 means was left open. */
  private static int millis(Deadline deadline) {
    long left = deadline.remaining().toMillis();
    long wayBack = Math.min(left / SHARE_FOR_WAY_BACK, LONGEST_WAY_BACK.toMillis());
    return (int) Math.max(1, Math.min(left - wayBack, Integer.MAX_VALUE));
  }
}

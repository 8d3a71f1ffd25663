package mainsgap.link;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.atomic.AtomicInteger;
import mainsgap.link.RpcMessages.Procedure;
import mainsgap.waiting.Deadline;
import org.acplt.oncrpc.OncRpcClientReplyMessage;
import org.acplt.oncrpc.OncRpcException;
import org.acplt.oncrpc.OncRpcMessageType;

/**
 * Calls over one TCP connection, one at a time. A call goes out, its reply is awaited by its number
 * and taken apart, and replies to calls that were given up are passed over. One thread owns it;
 * only {@link #close} may come from another.
 */
final class RpcConnection {
  private final ResourceName resource;
  private final TcpStream stream;
  private final AtomicInteger lastXid;
  private final RpcRecords records;
  private boolean awaiting;

  private RpcConnection(
      ResourceName resource, TcpStream stream, AtomicInteger lastXid, Deadline deadline) {
    this.resource = resource;
    this.stream = stream;
    this.lastXid = lastXid;
    this.records = new RpcRecords(resource, stream, deadline);
  }

  /**
   * Connects.
   *
   * @param resource whom the sentences name
   * @param lastXid counts the calls of all connections of a link
   */
  static RpcConnection open(
      ResourceName.Vxi11 resource, int port, AtomicInteger lastXid, Deadline deadline) {
    TcpStream stream = TcpStream.connect(resource, resource.host(), port, deadline);
    return new RpcConnection(resource, stream, lastXid, deadline);
  }

  /** Takes one thing out of a reply. */
  @FunctionalInterface
  interface Decoding<T> {
    T from(RpcRecords reply) throws OncRpcException, IOException;
  }

  /** Calls, waits, and takes the whole reply apart. */
  <T> T call(
      Procedure procedure, Vxi11Calls.Arguments arguments, Deadline deadline, Decoding<T> result) {
    int xid = send(procedure, arguments, deadline);
    await(xid, deadline);
    return decode(
        deadline,
        reply -> {
          T value = result.from(reply);
          reply.endDecoding();
          return value;
        });
  }

  /** Sends a call; its number. */
  int send(Procedure procedure, Vxi11Calls.Arguments arguments, Deadline deadline) {
    int xid = lastXid.incrementAndGet();
    awaiting = true;
    byte[] call = RpcMessages.record(xid, procedure, arguments.xdr(), arguments.bytes());
    try {
      stream.write(ByteBuffer.wrap(call), deadline);
    } catch (LinkTimeoutException e) {
      stream.drop(); // half a call is out: nothing can follow it
      throw e;
    }
    return xid;
  }

  /** Waits for the reply to a call, up to where its results begin. */
  void await(int xid, Deadline deadline) {
    decode(
        deadline,
        reply -> {
          OncRpcClientReplyMessage header = new OncRpcClientReplyMessage(null);
          do {
            reply.beginDecoding();
            header.xdrDecode(reply);
          } while (header.messageId != xid);
          awaiting = false;
          if (!header.successfullyAccepted()) {
            throw header.newException();
          }
          return header.messageType == OncRpcMessageType.ONCRPC_REPLY;
        });
  }

  /** Whether the peer still owes the reply to the last call. */
  boolean isAwaiting() {
    return awaiting;
  }

  /** Takes the next part of the results. */
  <T> T decode(Deadline deadline, Decoding<T> part) {
    records.waitUntil(deadline);
    try {
      return part.from(records);
    } catch (OncRpcException | IOException e) {
      throw wrong(String.valueOf(e.getMessage()));
    }
  }

  /** What the peer said breaks the rules: nothing after it can be trusted. */
  LinkClosedException wrong(String what) {
    stream.drop();
    return new LinkClosedException(
        resource
            + " does not answer as VXI-11 wants it ("
            + what
            + "), and was hung up on: connect again, or use another link, such as its raw socket");
  }

  /** Ends the wait of the owner too. Never throws. */
  void close() {
    stream.close();
  }
}

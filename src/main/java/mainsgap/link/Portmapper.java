package mainsgap.link;

import java.io.IOException;
import java.util.OptionalInt;
import org.acplt.oncrpc.OncRpcClientReplyMessage;
import org.acplt.oncrpc.OncRpcException;
import org.acplt.oncrpc.OncRpcPortmapClient;
import org.acplt.oncrpc.OncRpcPortmapServices;
import org.acplt.oncrpc.OncRpcProtocols;
import org.acplt.oncrpc.OncRpcServerIdent;
import org.acplt.oncrpc.XdrAble;
import org.acplt.oncrpc.XdrBufferDecodingStream;

/** The question to a portmapper (RFC 1833, version 2) where a program listens. Pure. */
final class Portmapper {
  /** Where portmappers listen. */
  static final int PORT = OncRpcPortmapClient.PMAP_PORT;

  static final RpcMessages.Procedure GET_PORT =
      new RpcMessages.Procedure(
          OncRpcPortmapClient.PMAP_PROGRAM,
          OncRpcPortmapClient.PMAP_VERSION,
          OncRpcPortmapServices.PMAP_GETPORT);
  static final int ARGUMENT_BYTES = 16;

  private Portmapper() {}

  /** Asks for the TCP port of a program. */
  static XdrAble arguments(int program, int version) {
    return new OncRpcServerIdent(program, version, OncRpcProtocols.ONCRPC_TCP, 0);
  }

  /** The port in a datagram; empty where it is no answer to {@code xid}, or has no such program. */
  static OptionalInt portIn(byte[] datagram, int bytes, int xid) {
    if (bytes % 4 != 0) {
      return OptionalInt.empty();
    }
    XdrBufferDecodingStream xdr = new XdrBufferDecodingStream(datagram, bytes);
    OncRpcClientReplyMessage reply = new OncRpcClientReplyMessage(null);
    try {
      xdr.beginDecoding();
      reply.xdrDecode(xdr);
      boolean answers = reply.messageId == xid && reply.successfullyAccepted();
      return answers ? port(xdr.xdrDecodeInt()) : OptionalInt.empty();
    } catch (OncRpcException | IOException e) {
      return OptionalInt.empty();
    }
  }

  /** The port in an answer, which is 0 where no such program is known. */
  static OptionalInt port(int answer) {
    return answer > 0 && answer <= 65_535 ? OptionalInt.of(answer) : OptionalInt.empty();
  }
}

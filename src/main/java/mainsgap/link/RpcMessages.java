package mainsgap.link;

import java.io.IOException;
import java.util.Arrays;
import org.acplt.oncrpc.OncRpcClientCallMessage;
import org.acplt.oncrpc.OncRpcException;
import org.acplt.oncrpc.XdrAble;
import org.acplt.oncrpc.XdrBufferEncodingStream;

/** Calls of ONC RPC (RFC 5531) as bytes. Pure. */
final class RpcMessages {
  /** Goes before each record on TCP: its length, and in bit 31 that no further fragment comes. */
  static final int MARK_BYTES = 4;

  static final int LAST_FRAGMENT = 1 << 31;
  private static final int CALL_HEADER_BYTES = 40;

  /** The library's encoder wants a word more than it fills. */
  private static final int SPARE_BYTES = 4;

  private RpcMessages() {}

  /**
   * What is called.
   *
   * @param program its number in RPC
   * @param version of the program
   * @param number of the procedure in the program
   */
  record Procedure(int program, int version, int number) {}

  /** A call as one datagram. */
  static byte[] datagram(int xid, Procedure procedure, XdrAble arguments, int argumentBytes) {
    byte[] record = record(xid, procedure, arguments, argumentBytes);
    return Arrays.copyOfRange(record, MARK_BYTES, record.length);
  }

  /**
   * A call as one record of a single fragment, with its mark.
   *
   * @param argumentBytes at least what the arguments take
   */
  static byte[] record(int xid, Procedure procedure, XdrAble arguments, int argumentBytes) {
    int room = MARK_BYTES + CALL_HEADER_BYTES + argumentBytes + SPARE_BYTES;
    XdrBufferEncodingStream xdr = new XdrBufferEncodingStream((room + 3) & ~3);
    try {
      xdr.xdrEncodeInt(0);
      new OncRpcClientCallMessage(
              xid, procedure.program(), procedure.version(), procedure.number(), null)
          .xdrEncode(xdr);
      arguments.xdrEncode(xdr);
    } catch (OncRpcException | IOException e) {
      throw new IllegalStateException("a call does not fit its " + room + " bytes", e);
    }
    byte[] bytes = Arrays.copyOf(xdr.getXdrData(), xdr.getXdrLength());
    mark(bytes);
    return bytes;
  }

  private static void mark(byte[] record) {
    int mark = LAST_FRAGMENT | (record.length - MARK_BYTES);
    for (int i = 0; i < MARK_BYTES; i++) {
      record[i] = (byte) (mark >>> (24 - 8 * i));
    }
  }
}

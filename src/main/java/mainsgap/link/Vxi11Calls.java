package mainsgap.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import mainsgap.link.RpcMessages.Procedure;
import org.acplt.oncrpc.OncRpcException;
import org.acplt.oncrpc.XdrAble;
import org.acplt.oncrpc.XdrDecodingStream;
import org.acplt.oncrpc.XdrEncodingStream;

/**
 * The procedures of VXI-11 (Rev 1.0, tables B.3 and C.1) and their arguments, in the order of the
 * standard: calls with two time-outs have them in one order for reading and writing, and in the
 * other for all else. Pure.
 */
final class Vxi11Calls {
  static final int CORE_PROGRAM = 0x0607AF;
  static final int ABORT_PROGRAM = 0x0607B0;
  static final int VERSION = 1;

  static final Procedure CREATE_LINK = core(10);
  static final Procedure DEVICE_WRITE = core(11);
  static final Procedure DEVICE_READ = core(12);
  static final Procedure DEVICE_READ_STATUS = core(13);
  static final Procedure DEVICE_CLEAR = core(15);
  static final Procedure DESTROY_LINK = core(23);
  static final Procedure DEVICE_ABORT = new Procedure(ABORT_PROGRAM, VERSION, 1);

  /** Flag of a write: its last byte ends the message. */
  static final int FLAG_END = 0x08;

  /** Reasons why a read ended: the end of a message, or its termination character. */
  static final int REASONS_OF_END = 0x04 | 0x02;

  /** Instruments are known that take no other value than 0, 'do not wait'. */
  private static final int LOCK_TIMEOUT_MILLIS = 0;

  private static final int FIXED_ARGUMENT_BYTES = 24;

  private Vxi11Calls() {}

  /**
   * Arguments and the most bytes that they take.
   *
   * @param xdr encodes them
   * @param bytes at least what they take
   */
  record Arguments(XdrAble xdr, int bytes) {
    private static Arguments of(Encoding encoding) {
      return of(encoding, 0);
    }

    private static Arguments of(Encoding encoding, int opaqueBytes) {
      return new Arguments(encoding, FIXED_ARGUMENT_BYTES + opaqueBytes);
    }
  }

  static Arguments createLink(int clientId, String deviceName) {
    byte[] name = deviceName.getBytes(StandardCharsets.US_ASCII);
    return Arguments.of(
        xdr -> {
          xdr.xdrEncodeInt(clientId);
          xdr.xdrEncodeBoolean(false);
          xdr.xdrEncodeInt(LOCK_TIMEOUT_MILLIS);
          xdr.xdrEncodeDynamicOpaque(name);
        },
        name.length);
  }

  static Arguments write(int linkId, int timeoutMillis, int flags, byte[] data) {
    return Arguments.of(
        xdr -> {
          xdr.xdrEncodeInt(linkId);
          xdr.xdrEncodeInt(timeoutMillis);
          xdr.xdrEncodeInt(LOCK_TIMEOUT_MILLIS);
          xdr.xdrEncodeInt(flags);
          xdr.xdrEncodeDynamicOpaque(data);
        },
        data.length);
  }

  /** No termination character: a block may hold any byte. */
  static Arguments read(int linkId, int mostBytes, int timeoutMillis) {
    return Arguments.of(
        xdr -> {
          xdr.xdrEncodeInt(linkId);
          xdr.xdrEncodeInt(mostBytes);
          xdr.xdrEncodeInt(timeoutMillis);
          xdr.xdrEncodeInt(LOCK_TIMEOUT_MILLIS);
          xdr.xdrEncodeInt(0);
          xdr.xdrEncodeInt(0);
        });
  }

  /** Of the status byte and of device clear. */
  static Arguments generic(int linkId, int timeoutMillis) {
    return Arguments.of(
        xdr -> {
          xdr.xdrEncodeInt(linkId);
          xdr.xdrEncodeInt(0);
          xdr.xdrEncodeInt(LOCK_TIMEOUT_MILLIS);
          xdr.xdrEncodeInt(timeoutMillis);
        });
  }

  /** Of destroying a link and of aborting its call. */
  static Arguments link(int linkId) {
    return Arguments.of(xdr -> xdr.xdrEncodeInt(linkId));
  }

  private static Procedure core(int number) {
    return new Procedure(CORE_PROGRAM, VERSION, number);
  }

  /** Arguments are only ever encoded. */
  @FunctionalInterface
  private interface Encoding extends XdrAble {
    @Override
    void xdrEncode(XdrEncodingStream xdr) throws OncRpcException, IOException;

    @Override
    default void xdrDecode(XdrDecodingStream xdr) {
      throw new UnsupportedOperationException("arguments are not decoded");
    }
  }
}

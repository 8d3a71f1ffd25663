package mainsgap.simulation;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;

/**
 * One call of ONC RPC (RFC 5531) as a server takes it: its header, and its arguments in XDR (RFC
 * 4506), taken one after the other.
 */
final class RpcCall {
  /** The longest message of a client, in one piece, and its header. */
  private static final int MOST_BYTES = 128 * 1024;

  private static final int LAST_FRAGMENT = 1 << 31;
  private static final int LONGEST_CREDENTIALS = 400;

  private final ByteBuffer rest;
  private final int xid;
  private final int rpcVersion;
  private final int program;
  private final int version;
  private final int procedure;

  private RpcCall(ByteBuffer record) throws IOException {
    rest = record;
    xid = number();
    if (number() != 0) {
      throw new IOException("a client sent a reply where a call should be");
    }
    rpcVersion = number();
    program = number();
    version = number();
    procedure = number();
    skipCredentials();
    skipCredentials();
  }

  /**
   * Reads the next call.
   *
   * @throws EOFException where the client has gone
   * @throws IOException where it sends what no call can be
   */
  static RpcCall from(DataInputStream in) throws IOException {
    ByteBuffer record = ByteBuffer.allocate(MOST_BYTES);
    boolean last = false;
    while (!last) {
      int mark = in.readInt();
      last = (mark & LAST_FRAGMENT) != 0;
      int bytes = mark & ~LAST_FRAGMENT;
      if (bytes == 0 || bytes > record.remaining()) {
        throw new IOException("a client sent a fragment of " + bytes + " bytes");
      }
      in.readFully(record.array(), record.position(), bytes);
      record.position(record.position() + bytes);
    }
    return new RpcCall(record.flip());
  }

  int xid() {
    return xid;
  }

  int rpcVersion() {
    return rpcVersion;
  }

  int program() {
    return program;
  }

  int version() {
    return version;
  }

  int procedure() {
    return procedure;
  }

  /** The next argument as a whole number. */
  int number() throws IOException {
    try {
      return rest.getInt();
    } catch (BufferUnderflowException e) {
      throw new IOException("a call ends too early", e);
    }
  }

  /** The next argument as bytes of any length. */
  byte[] opaque() throws IOException {
    int bytes = number();
    if (bytes < 0 || bytes > rest.remaining()) {
      throw new IOException(
          "a call claims " + bytes + " bytes where " + rest.remaining() + " came");
    }
    byte[] opaque = new byte[bytes];
    rest.get(opaque);
    rest.position(Math.min(rest.limit(), rest.position() + (-bytes & 3)));
    return opaque;
  }

  private void skipCredentials() throws IOException {
    int unusedFlavour = number();
    if (opaque().length > LONGEST_CREDENTIALS) {
      throw new IOException("a call has longer credentials than RFC 5531 allows");
    }
  }
}

package mainsgap.simulation;

import java.io.IOException;
import java.io.OutputStream;

/** Cuts a response message into pieces that the client takes. */
final class HislipReply extends OutputStream {
  private final Piece out;
  private final byte[] buffer;
  private int filled;

  /** Where the pieces go. */
  interface Piece {
    /** Sends the first {@code length} of {@code bytes}. */
    void send(byte[] bytes, int length, boolean last) throws IOException;
  }

  HislipReply(Piece out, int mostBytes) {
    this.out = out;
    this.buffer = new byte[mostBytes];
  }

  @Override
  public void write(int one) throws IOException {
    makeRoom();
    buffer[filled] = (byte) one;
    filled++;
  }

  @Override
  public void write(byte[] bytes, int offset, int length) throws IOException {
    int done = 0;
    while (done < length) {
      makeRoom();
      int more = Math.min(buffer.length - filled, length - done);
      System.arraycopy(bytes, offset + done, buffer, filled, more);
      filled += more;
      done += more;
    }
  }

  /** Sends what there is, as a piece that is not the last. */
  @Override
  public void flush() throws IOException {
    if (filled > 0) {
      out.send(buffer, filled, false);
      filled = 0;
    }
  }

  /** Sends what there is as the last piece. */
  void end() throws IOException {
    out.send(buffer, filled, true);
    filled = 0;
  }

  private void makeRoom() throws IOException {
    if (filled == buffer.length) {
      flush();
    }
  }
}

package mainsgap.scpi;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import mainsgap.link.LoopbackPeer;

/** What the machine can do: a reply of known length, asked for and read into an array. */
final class PlainCopy implements TransferBenchmark.Transfer {
  private final LoopbackPeer peer = new LoopbackPeer();
  private final Socket socket = new Socket(InetAddress.getLoopbackAddress(), peer.port());
  private final InputStream in = socket.getInputStream();
  private final int bytes;

  PlainCopy(byte[] reply) throws IOException {
    bytes = reply.length;
    peer.answer("WAV?", LoopbackPeer.bytes(reply));
    socket.setTcpNoDelay(true);
  }

  @Override
  public byte[] read() throws IOException {
    socket.getOutputStream().write(LoopbackPeer.ascii("WAV?\n"));
    byte[] reply = new byte[bytes];
    if (in.readNBytes(reply, 0, bytes) < bytes) {
      throw new IOException("the reply is short");
    }
    return reply;
  }

  @Override
  public void close() throws IOException {
    socket.close();
    peer.close();
  }
}

package mainsgap.simulation;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;

/**
 * An invented relay board whose relay drives the contactor in the mains. Its frames have three
 * bytes: {@link #HEAD}, what to do, {@link #TAIL}.
 */
final class RelayBoard implements LoopbackListener.Talk {
  static final int HEAD = 0x5A;
  static final int TAIL = 0xA5;
  static final int OFF = 0x00;
  static final int ON = 0x01;
  static final int TELL = 0x02;
  static final int DONE = 0x06;
  static final int REFUSED = 0x15;

  private final CommandedMains mains;

  RelayBoard(CommandedMains mains) {
    this.mains = mains;
  }

  @Override
  public void on(Socket connection) throws IOException {
    with(connection.getInputStream(), connection.getOutputStream());
  }

  /** Answers each frame until the other side goes. */
  void with(InputStream in, OutputStream out) throws IOException {
    byte[] frame = in.readNBytes(3);
    while (frame.length == 3) {
      if (mains.fault() != SwitchFault.SILENT) {
        out.write(answer(frame));
        out.flush();
      }
      frame = in.readNBytes(3);
    }
  }

  private byte[] answer(byte[] frame) {
    boolean whole = (frame[0] & 0xFF) == HEAD && (frame[2] & 0xFF) == TAIL;
    if (!whole || mains.fault() == SwitchFault.ANSWERS_WITH_ERROR) {
      return new byte[] {REFUSED};
    }
    return switch (frame[1]) {
      case ON -> {
        mains.close();
        yield new byte[] {DONE};
      }
      case OFF -> {
        mains.open();
        yield new byte[] {DONE};
      }
      case TELL -> new byte[] {(byte) HEAD, (byte) (mains.isClosed() ? ON : OFF), (byte) TAIL};
      default -> new byte[] {REFUSED};
    };
  }
}

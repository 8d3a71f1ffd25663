package mainsgap.link;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;

/** The system calls themselves, through the C library. */
final class LinuxUsbtmc implements UsbtmcKernel {
  private static final int READ_AND_WRITE = 2;
  private static final int CLOSE_ON_EXEC = 0x80000;
  private static final int EINTR = 4;

  private final C c;

  private LinuxUsbtmc(C c) {
    this.c = c;
  }

  /** The functions of the C library; each call that fails throws with the error number. */
  interface C extends Library {
    int open(String path, int flags, Object... mode) throws LastErrorException;

    NativeLong write(int file, byte[] bytes, NativeLong count) throws LastErrorException;

    NativeLong read(int file, byte[] into, NativeLong count) throws LastErrorException;

    int ioctl(int file, NativeLong request, Object... argument) throws LastErrorException;

    int close(int file) throws LastErrorException;
  }

  /** Throws a {@link LinkageError} where the C library can't be reached. */
  static LinuxUsbtmc load() {
    return new LinuxUsbtmc(Native.load("c", C.class));
  }

  @Override
  public int open(String path) throws Failed {
    return call(() -> c.open(path, READ_AND_WRITE | CLOSE_ON_EXEC));
  }

  @Override
  public int write(int file, byte[] bytes) throws Failed {
    return call(() -> c.write(file, bytes, new NativeLong(bytes.length)).intValue());
  }

  @Override
  public int read(int file, byte[] into) throws Failed {
    return call(() -> c.read(file, into, new NativeLong(into.length)).intValue());
  }

  @Override
  public void ioctl(int file, long request, byte[] argument) throws Failed {
    int unused = call(() -> c.ioctl(file, new NativeLong(request, true), (Object) argument));
  }

  @Override
  public void close(int file) throws Failed {
    try {
      int unused = c.close(file);
    } catch (LastErrorException e) {
      throw new Failed(e.getErrorCode());
    }
  }

  /** A system call. */
  @FunctionalInterface
  private interface SystemCall {
    int make() throws LastErrorException;
  }

  /** A signal, which the Java machine uses for itself, breaks a call off before it did anything. */
  private static int call(SystemCall call) throws Failed {
    while (true) {
      try {
        return call.make();
      } catch (LastErrorException e) {
        if (e.getErrorCode() != EINTR) {
          throw new Failed(e.getErrorCode());
        }
      }
    }
  }
}

package mainsgap.link;

/**
 * The system calls of Linux that a USBTMC instrument needs. Each fails with the error number of the
 * system.
 */
interface UsbtmcKernel {

  /** A call failed. */
  final class Failed extends Exception {
    private static final long serialVersionUID = 1L;

    private final int errno;

    Failed(int errno) {
      super("error " + errno);
      this.errno = errno;
    }

    int errno() {
      return errno;
    }
  }

  /** Opens for reading and writing; gives the file descriptor. */
  int open(String path) throws Failed;

  /** Gives how many bytes were taken. */
  int write(int file, byte[] bytes) throws Failed;

  /** Gives how many bytes came. */
  int read(int file, byte[] into) throws Failed;

  /** A request of the driver with what it takes and gives; empty where it has neither. */
  void ioctl(int file, long request, byte[] argument) throws Failed;

  /** Closes the file. */
  void close(int file) throws Failed;
}

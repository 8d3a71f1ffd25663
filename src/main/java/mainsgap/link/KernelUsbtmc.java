package mainsgap.link;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.OptionalInt;
import mainsgap.link.UsbtmcKernel.Failed;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An instrument behind {@code /dev/usbtmcN}, where the kernel does the framing: one write is one
 * message with its end, one read is one request. Numbers of requests are those of {@code
 * linux/usb/tmc.h} on x86-64 and ARM; a kernel before 4.20 lacks some of them.
 */
final class KernelUsbtmc implements UsbtmcDevice {
  static final long CLEAR = 0x5B02;
  static final long SET_TIMEOUT = 0x40045B0AL;
  static final long READ_STB = 0x80015B12L;
  static final long MSG_IN_ATTR = 0x80015B18L;

  /** The kernel takes no shorter time-out. */
  static final int SHORTEST_MILLIS = 100;

  private static final int ENOENT = 2;
  private static final int ENXIO = 6;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int ENODEV = 19;
  private static final int EINVAL = 22;
  private static final int ENOTTY = 25;
  private static final int EPIPE = 32;
  private static final int ESHUTDOWN = 108;
  private static final int ETIMEDOUT = 110;
  private static final byte[] NOTHING = {};
  private static final Logger LOG = LoggerFactory.getLogger(KernelUsbtmc.class);

  private final UsbtmcKernel kernel;
  private final int file;
  private int timeoutMillis;
  private boolean tellsEnd = true;

  private KernelUsbtmc(UsbtmcKernel kernel, int file) {
    this.kernel = kernel;
    this.file = file;
  }

  /**
   * Opens a node.
   *
   * @throws LinkException with a sentence that begins with the name of the resource
   */
  static KernelUsbtmc open(UsbtmcKernel kernel, Path node, ResourceName.Usb resource) {
    try {
      return new KernelUsbtmc(kernel, kernel.open(node.toString()));
    } catch (Failed e) {
      throw new LinkException(resource + ": " + node + " does not open: " + why(e.errno()), e);
    }
  }

  @Override
  public void send(byte[] message, int timeout) throws UsbFault {
    setTimeout(timeout);
    int taken;
    try {
      taken = kernel.write(file, message);
    } catch (Failed e) {
      throw fault(e);
    }
    if (taken != message.length) {
      throw new UsbFault(
          UsbFault.Kind.OTHER, "it took " + taken + " of " + message.length + " bytes");
    }
  }

  @Override
  public Received receive(byte[] into, int timeout) throws UsbFault {
    setTimeout(timeout);
    int bytes;
    try {
      bytes = kernel.read(file, into);
    } catch (Failed e) {
      throw fault(e);
    }
    if (bytes < 0 || bytes > into.length) {
      throw new UsbFault(
          UsbFault.Kind.OTHER, bytes + " bytes came where " + into.length + " were asked for");
    }
    return new Received(bytes, endsMessage(bytes, into.length));
  }

  /** The kernel asks the instrument anew with each read. */
  @Override
  public boolean resumes() {
    return false;
  }

  @Override
  public OptionalInt statusByte(int timeout) throws UsbFault {
    setTimeout(timeout);
    byte[] status = new byte[1];
    try {
      kernel.ioctl(file, READ_STB, status);
    } catch (Failed e) {
      UsbFault fault = fault(e);
      if (isRefused(fault)) {
        return OptionalInt.empty();
      }
      throw fault;
    }
    return OptionalInt.of(status[0] & 0xFF);
  }

  @Override
  public void clear(int timeout) throws UsbFault {
    setTimeout(timeout);
    try {
      kernel.ioctl(file, CLEAR, NOTHING);
    } catch (Failed e) {
      throw fault(e);
    }
  }

  @Override
  public void close() {
    try {
      kernel.close(file);
    } catch (Failed e) {
      LOG.debug("closing a USB instrument failed", e);
    }
  }

  /** Without the kernel's word, less than was asked for is the end. */
  private boolean endsMessage(int bytes, int asked) throws UsbFault {
    if (tellsEnd) {
      byte[] attributes = new byte[1];
      try {
        kernel.ioctl(file, MSG_IN_ATTR, attributes);
        return (attributes[0] & UsbtmcFrames.END_OF_MESSAGE) != 0;
      } catch (Failed e) {
        UsbFault fault = fault(e);
        if (fault.kind() != UsbFault.Kind.UNSUPPORTED) {
          throw fault;
        }
        tellsEnd = false;
      }
    }
    return bytes < asked;
  }

  private void setTimeout(int wanted) throws UsbFault {
    int millis = Math.max(SHORTEST_MILLIS, wanted);
    if (millis == timeoutMillis) {
      return;
    }
    byte[] argument =
        ByteBuffer.allocate(Integer.BYTES).order(ByteOrder.nativeOrder()).putInt(millis).array();
    try {
      kernel.ioctl(file, SET_TIMEOUT, argument);
      timeoutMillis = millis;
    } catch (Failed e) {
      UsbFault fault = fault(e);
      if (fault.kind() != UsbFault.Kind.UNSUPPORTED) {
        throw fault;
      }
      LOG.debug("this kernel has one time-out for all, 5 s");
    }
  }

  private static boolean isRefused(UsbFault fault) {
    return fault.kind() == UsbFault.Kind.UNSUPPORTED || fault.kind() == UsbFault.Kind.STALLED;
  }

  private static UsbFault fault(Failed failed) {
    return switch (failed.errno()) {
      case ETIMEDOUT -> new UsbFault(UsbFault.Kind.TIMEOUT, "time-out");
      case ENODEV, ENXIO, ENOENT, ESHUTDOWN -> new UsbFault(UsbFault.Kind.GONE, "unplugged");
      case EPIPE -> new UsbFault(UsbFault.Kind.STALLED, "stalled");
      case EINVAL, ENOTTY -> new UsbFault(UsbFault.Kind.UNSUPPORTED, "no such request");
      default -> new UsbFault(UsbFault.Kind.OTHER, String.valueOf(failed.getMessage()));
    };
  }

  private static String why(int errno) {
    return switch (errno) {
      case EACCES ->
          "you may not use it; as root, add the line KERNEL==\"usbtmc[0-9]*\", MODE=\"0660\","
              + " GROUP=\"usbtmc\" to /etc/udev/rules.d/50-usbtmc.rules, join that group and log in"
              + " again";
      case EBUSY -> "another program holds it; close that first";
      case ENOENT, ENXIO, ENODEV -> "it is gone; look at the cable and at the instrument";
      default -> "error " + errno + " of the system; unplug it, plug it in and try again";
    };
  }
}

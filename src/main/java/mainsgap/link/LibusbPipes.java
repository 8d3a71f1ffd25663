package mainsgap.link;

import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;

/** The endpoints through libusb; takes over the handle and the context. */
final class LibusbPipes implements UsbPipes {
  /** Class request from an interface. */
  private static final byte FROM_INTERFACE = (byte) 0xA1;

  private final Libusb libusb;
  private final Pointer context;
  private final Pointer handle;
  private final UsbtmcInterface kind;

  LibusbPipes(Libusb libusb, Pointer context, Pointer handle, UsbtmcInterface kind) {
    this.libusb = libusb;
    this.context = context;
    this.handle = handle;
    this.kind = kind;
  }

  @Override
  public UsbtmcInterface kind() {
    return kind;
  }

  @Override
  public int out(byte[] transfer, int timeoutMillis) throws UsbFault {
    IntByReference taken = new IntByReference();
    int error =
        libusb.libusb_bulk_transfer(
            handle, (byte) kind.bulkOut(), transfer, transfer.length, taken, timeoutMillis);
    if (error < 0) {
      throw LibusbFault.of(error);
    }
    return taken.getValue();
  }

  @Override
  public int in(byte[] into, int bytes, int timeoutMillis) throws UsbFault {
    IntByReference came = new IntByReference();
    int error =
        libusb.libusb_bulk_transfer(handle, (byte) kind.bulkIn(), into, bytes, came, timeoutMillis);
    return counted(error, came.getValue(), bytes);
  }

  @Override
  public int interrupt(byte[] into, int timeoutMillis) throws UsbFault {
    IntByReference came = new IntByReference();
    int error =
        libusb.libusb_interrupt_transfer(
            handle, (byte) kind.interruptIn(), into, into.length, came, timeoutMillis);
    return counted(error, came.getValue(), into.length);
  }

  @Override
  public int control(int request, int value, byte[] answer, int timeoutMillis) throws UsbFault {
    int came =
        libusb.libusb_control_transfer(
            handle,
            FROM_INTERFACE,
            (byte) request,
            (short) value,
            (short) kind.number(),
            answer,
            (short) answer.length,
            timeoutMillis);
    if (came < 0) {
      throw LibusbFault.of(came);
    }
    return came;
  }

  @Override
  public void clearHaltOut() throws UsbFault {
    int error = libusb.libusb_clear_halt(handle, (byte) kind.bulkOut());
    if (error < 0) {
      throw LibusbFault.of(error);
    }
  }

  @Override
  public void close() {
    int unused = libusb.libusb_release_interface(handle, kind.number());
    libusb.libusb_close(handle);
    libusb.libusb_exit(context);
  }

  /** What came before a time-out has come. */
  private static int counted(int error, int came, int asked) throws UsbFault {
    if (error < 0 && !(error == LibusbFault.TIMEOUT && came > 0)) {
      throw LibusbFault.of(error);
    }
    if (came < 0 || came > asked) {
      throw new UsbFault(UsbFault.Kind.OTHER, came + " bytes came where " + asked + " were asked");
    }
    return came;
  }
}

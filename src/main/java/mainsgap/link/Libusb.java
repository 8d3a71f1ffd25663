package mainsgap.link;

import com.sun.jna.IntegerType;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.PointerByReference;

/** The functions of libusb 1.0 that are used; each that fails gives a negative number. */
interface Libusb extends Library {

  /** A count as wide as a pointer, or a negative error. */
  final class Count extends IntegerType {
    private static final long serialVersionUID = 1L;

    /** Made by the library for native calls. */
    public Count() {
      this(0);
    }

    /** A count. */
    public Count(long value) {
      super(Native.SIZE_T_SIZE, value);
    }
  }

  int libusb_init(PointerByReference context);

  void libusb_exit(Pointer context);

  Count libusb_get_device_list(Pointer context, PointerByReference list);

  void libusb_free_device_list(Pointer list, int unreference);

  int libusb_get_device_descriptor(Pointer device, byte[] descriptor);

  int libusb_get_string_descriptor_ascii(Pointer handle, byte index, byte[] text, int length);

  int libusb_open(Pointer device, PointerByReference handle);

  void libusb_close(Pointer handle);

  int libusb_set_auto_detach_kernel_driver(Pointer handle, int enable);

  int libusb_claim_interface(Pointer handle, int number);

  int libusb_release_interface(Pointer handle, int number);

  int libusb_control_transfer(
      Pointer handle,
      byte type,
      byte request,
      short value,
      short index,
      byte[] data,
      short length,
      int timeoutMillis);

  int libusb_bulk_transfer(
      Pointer handle,
      byte endpoint,
      byte[] data,
      int length,
      IntByReference transferred,
      int timeoutMillis);

  int libusb_interrupt_transfer(
      Pointer handle,
      byte endpoint,
      byte[] data,
      int length,
      IntByReference transferred,
      int timeoutMillis);

  int libusb_clear_halt(Pointer handle, byte endpoint);
}

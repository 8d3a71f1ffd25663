package mainsgap.link;

import com.sun.jna.Native;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.PointerByReference;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Finds and opens an instrument through libusb, where the system has no driver for USBTMC. Only
 * devices with the right vendor and product are opened.
 */
final class LibusbBus {
  static final int DESCRIPTOR_BYTES = 18;

  private static final byte FROM_DEVICE = (byte) 0x80;
  private static final byte GET_DESCRIPTOR = 6;
  private static final short FIRST_CONFIGURATION = 0x0200;
  private static final int LONGEST_CONFIGURATION = 4096;
  private static final int LONGEST_TEXT = 256;
  private static final int ANSWER_MILLIS = 1000;

  private final Libusb libusb;
  private final ResourceName.Usb wanted;

  LibusbBus(Libusb libusb, ResourceName.Usb wanted) {
    this.libusb = libusb;
    this.wanted = wanted;
  }

  /**
   * The library of this machine.
   *
   * @throws LinkageError where it is not installed
   */
  static Libusb load() {
    if (Platform.isMac()) {
      // where the usual package managers put it
      NativeLibrary.addSearchPath("usb-1.0", "/opt/homebrew/lib");
      NativeLibrary.addSearchPath("usb-1.0", "/usr/local/lib");
    }
    return Native.load(Platform.isWindows() ? "libusb-1.0" : "usb-1.0", Libusb.class);
  }

  /**
   * Opens the instrument.
   *
   * @throws LinkException naming what to use instead where it can't be
   */
  LibusbPipes open() {
    PointerByReference context = new PointerByReference();
    int error = libusb.libusb_init(context);
    if (error < 0) {
      throw failed("libusb does not start (error " + error + ")");
    }
    @Nullable LibusbPipes pipes = null;
    try {
      pipes = search(context.getValue());
    } finally {
      if (pipes == null) {
        libusb.libusb_exit(context.getValue());
      }
    }
    return pipes;
  }

  private LibusbPipes search(Pointer context) {
    PointerByReference list = new PointerByReference();
    int count = libusb.libusb_get_device_list(context, list).intValue();
    if (count < 0) {
      throw failed("libusb does not list devices (error " + count + ")");
    }
    try {
      String why = "no such instrument is plugged in";
      for (int i = 0; i < count; i++) {
        Pointer device = list.getValue().getPointer((long) i * Native.POINTER_SIZE);
        byte[] descriptor = new byte[DESCRIPTOR_BYTES];
        if (libusb.libusb_get_device_descriptor(device, descriptor) < 0 || !isMeant(descriptor)) {
          continue;
        }
        PointerByReference handle = new PointerByReference();
        int error = libusb.libusb_open(device, handle);
        if (error < 0) {
          why = LibusbFault.whyNotOpen(error);
          continue;
        }
        LibusbPipes pipes = claimed(context, handle.getValue(), descriptor);
        if (pipes != null) {
          return pipes;
        }
      }
      throw failed(why);
    } finally {
      libusb.libusb_free_device_list(list.getValue(), 1);
    }
  }

  /** Null where it is another one of the same model; closes the handle unless it gives pipes. */
  private @Nullable LibusbPipes claimed(Pointer context, Pointer handle, byte[] descriptor) {
    @Nullable LibusbPipes pipes = null;
    try {
      if (wanted.serial().equals(serial(handle, descriptor[16]))) {
        pipes = new LibusbPipes(libusb, context, handle, claim(handle));
      }
    } finally {
      if (pipes == null) {
        libusb.libusb_close(handle);
      }
    }
    return pipes;
  }

  private UsbtmcInterface claim(Pointer handle) {
    byte[] configuration = new byte[LONGEST_CONFIGURATION];
    int bytes =
        libusb.libusb_control_transfer(
            handle,
            FROM_DEVICE,
            GET_DESCRIPTOR,
            FIRST_CONFIGURATION,
            (short) 0,
            configuration,
            (short) configuration.length,
            ANSWER_MILLIS);
    if (bytes < 0 || bytes > configuration.length) {
      throw failed("it does not describe itself (error " + bytes + ")");
    }
    Optional<UsbtmcInterface> found =
        UsbtmcInterface.find(configuration, bytes, wanted.interfaceNumber());
    if (found.isEmpty()) {
      throw failed("its interface " + wanted.interfaceNumber() + " is not one of USBTMC");
    }
    // not every system has drivers that can be detached: then claiming says what is wrong
    int unused = libusb.libusb_set_auto_detach_kernel_driver(handle, 1);
    int error = libusb.libusb_claim_interface(handle, wanted.interfaceNumber());
    if (error < 0) {
      throw failed(LibusbFault.whyNotOpen(error));
    }
    return found.get();
  }

  private boolean isMeant(byte[] descriptor) {
    ByteBuffer fields = ByteBuffer.wrap(descriptor).order(ByteOrder.LITTLE_ENDIAN);
    return Short.toUnsignedInt(fields.getShort(8)) == wanted.vendor()
        && Short.toUnsignedInt(fields.getShort(10)) == wanted.product();
  }

  private String serial(Pointer handle, byte index) {
    if (index == 0) {
      return UsbInstruments.NO_SERIAL;
    }
    byte[] text = new byte[LONGEST_TEXT];
    int bytes = libusb.libusb_get_string_descriptor_ascii(handle, index, text, text.length);
    return bytes <= 0 || bytes > text.length
        ? UsbInstruments.NO_SERIAL
        : new String(text, 0, bytes, StandardCharsets.US_ASCII).strip();
  }

  private LinkException failed(String why) {
    return new LinkException(wanted + " does not open through libusb: " + why + UsbLinks.INSTEAD);
  }
}

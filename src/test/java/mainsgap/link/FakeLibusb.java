package mainsgap.link;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.PointerByReference;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** libusb with devices that are fakes; each is told by the number of its place. */
final class FakeLibusb implements Libusb {
  /** A USBTMC interface 0 with an endpoint out, one in, packets of 64 bytes. */
  static final String CONFIGURATION =
      "0902200001010080320904000002FE0301000705010240000007058202400000";

  /** A device. */
  static final class Plugged {
    final int vendor;
    final int product;
    final String serial;
    final FakeUsbInstrument instrument = new FakeUsbInstrument();
    String configuration = CONFIGURATION;
    int openError;
    int claimError;
    int opened;
    int closed;
    int claimed;
    int released;

    Plugged(int vendor, int product, String serial) {
      this.vendor = vendor;
      this.product = product;
      this.serial = serial;
    }
  }

  final List<Plugged> devices = new ArrayList<>();
  int contexts;
  int lists;
  int initError;
  private @Nullable Memory list;

  @Override
  public int libusb_init(PointerByReference context) {
    if (initError < 0) {
      return initError;
    }
    contexts++;
    context.setValue(new Pointer(0x1000));
    return 0;
  }

  @Override
  public void libusb_exit(Pointer context) {
    contexts--;
  }

  @Override
  public Count libusb_get_device_list(Pointer context, PointerByReference into) {
    Memory memory = new Memory((devices.size() + 1L) * Native.POINTER_SIZE);
    for (int i = 0; i < devices.size(); i++) {
      memory.setPointer((long) i * Native.POINTER_SIZE, new Pointer(i + 1L));
    }
    list = memory;
    into.setValue(memory);
    lists++;
    return new Count(devices.size());
  }

  @Override
  public void libusb_free_device_list(Pointer freed, int unreference) {
    lists--;
    if (!freed.equals(list) || unreference != 1) {
      throw new AssertionError("not the list that was given, or its devices are kept");
    }
  }

  @Override
  public int libusb_get_device_descriptor(Pointer device, byte[] descriptor) {
    ByteBuffer fields = ByteBuffer.wrap(descriptor).order(ByteOrder.LITTLE_ENDIAN);
    fields.put(0, (byte) 18).put(1, (byte) 1);
    fields.putShort(8, (short) at(device).vendor).putShort(10, (short) at(device).product);
    fields.put(16, (byte) (at(device).serial.isEmpty() ? 0 : 3));
    return 0;
  }

  @Override
  public int libusb_get_string_descriptor_ascii(
      Pointer handle, byte index, byte[] text, int length) {
    byte[] serial = at(handle).serial.getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(serial, 0, text, 0, serial.length);
    return index == 3 ? serial.length : LibusbFault.NOT_FOUND;
  }

  @Override
  public int libusb_open(Pointer device, PointerByReference handle) {
    if (at(device).openError < 0) {
      return at(device).openError;
    }
    at(device).opened++;
    handle.setValue(device);
    return 0;
  }

  @Override
  public void libusb_close(Pointer handle) {
    at(handle).closed++;
  }

  @Override
  public int libusb_set_auto_detach_kernel_driver(Pointer handle, int enable) {
    return LibusbFault.NOT_SUPPORTED;
  }

  @Override
  public int libusb_claim_interface(Pointer handle, int number) {
    at(handle).claimed++;
    return at(handle).claimError;
  }

  @Override
  public int libusb_release_interface(Pointer handle, int number) {
    at(handle).released++;
    return 0;
  }

  @Override
  public int libusb_control_transfer(
      Pointer handle,
      byte type,
      byte request,
      short value,
      short index,
      byte[] data,
      short length,
      int timeoutMillis) {
    if (type == (byte) 0x80 && request == 6 && value == 0x0200) {
      byte[] configuration = HexFormat.of().parseHex(at(handle).configuration);
      System.arraycopy(configuration, 0, data, 0, configuration.length);
      return configuration.length;
    }
    if (type != (byte) 0xA1 || index != 0) {
      throw new AssertionError("no request of an interface");
    }
    try {
      return at(handle).instrument.control(request & 0xFF, value, data, timeoutMillis);
    } catch (UsbFault e) {
      return error(e);
    }
  }

  @Override
  public int libusb_bulk_transfer(
      Pointer handle,
      byte endpoint,
      byte[] data,
      int length,
      IntByReference transferred,
      int timeoutMillis) {
    FakeUsbInstrument instrument = at(handle).instrument;
    try {
      boolean in = (endpoint & 0x80) != 0;
      transferred.setValue(
          in
              ? instrument.in(data, length, timeoutMillis)
              : instrument.out(Arrays.copyOf(data, length), timeoutMillis));
      return 0;
    } catch (UsbFault e) {
      return error(e);
    }
  }

  @Override
  public int libusb_interrupt_transfer(
      Pointer handle,
      byte endpoint,
      byte[] data,
      int length,
      IntByReference transferred,
      int timeoutMillis) {
    throw new AssertionError("it has no interrupt endpoint");
  }

  @Override
  public int libusb_clear_halt(Pointer handle, byte endpoint) {
    at(handle).instrument.clearHaltOut();
    return endpoint == FakeUsbInstrument.BULK_OUT ? 0 : LibusbFault.NOT_FOUND;
  }

  private Plugged at(Pointer place) {
    return devices.get((int) Pointer.nativeValue(place) - 1);
  }

  private static int error(UsbFault fault) {
    return switch (fault.kind()) {
      case TIMEOUT -> LibusbFault.TIMEOUT;
      case GONE -> LibusbFault.NO_DEVICE;
      case STALLED -> LibusbFault.PIPE;
      case UNSUPPORTED -> LibusbFault.NOT_SUPPORTED;
      case OTHER -> -1;
    };
  }
}

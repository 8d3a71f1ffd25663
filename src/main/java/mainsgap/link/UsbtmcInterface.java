package mainsgap.link;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A USBTMC interface, as a device describes it.
 *
 * @param number of the interface in the device
 * @param usb488 whether it knows the status byte
 * @param bulkOut address of the endpoint to the instrument
 * @param bulkIn address of the endpoint from it
 * @param interruptIn address of the endpoint for the status byte, 0 where there is none
 * @param packetBytes the longest packet from the instrument
 */
record UsbtmcInterface(
    int number, boolean usb488, int bulkOut, int bulkIn, int interruptIn, int packetBytes) {
  private static final int INTERFACE = 4;
  private static final int INTERFACE_BYTES = 9;
  private static final int ENDPOINT = 5;
  private static final int ENDPOINT_BYTES = 7;
  private static final int APPLICATION_CLASS = 0xFE;
  private static final int TEST_AND_MEASUREMENT = 3;
  private static final int USB488_PROTOCOL = 1;
  private static final int TOWARDS_COMPUTER = 0x80;
  private static final int BULK = 2;
  private static final int INTERRUPT = 3;
  private static final int PACKET_SIZE_BITS = 0x7FF;

  /**
   * Looks for the interface in a configuration descriptor (USB 2.0, tables 9-10, 9-12 and 9-13).
   *
   * @return empty where the number is not that of a whole USBTMC interface
   */
  static Optional<UsbtmcInterface> find(byte[] configuration, int bytes, int number) {
    ByteBuffer all =
        ByteBuffer.wrap(configuration, 0, bytes).slice().order(ByteOrder.LITTLE_ENDIAN);
    @Nullable UsbtmcInterface found = null;
    for (int at = 0; at + 2 <= bytes; ) {
      int length = all.get(at) & 0xFF;
      if (length < 2 || at + length > bytes) {
        break;
      }
      int type = all.get(at + 1);
      if (type == INTERFACE && length >= INTERFACE_BYTES) {
        if (found != null && found.isWhole()) {
          break;
        }
        found = begun(all, at, number);
      } else if (type == ENDPOINT && length >= ENDPOINT_BYTES && found != null) {
        found = found.with(all, at);
      }
      at += length;
    }
    return found != null && found.isWhole() ? Optional.of(found) : Optional.empty();
  }

  private static @Nullable UsbtmcInterface begun(ByteBuffer all, int at, int number) {
    boolean meant =
        (all.get(at + 2) & 0xFF) == number
            && (all.get(at + 5) & 0xFF) == APPLICATION_CLASS
            && all.get(at + 6) == TEST_AND_MEASUREMENT;
    return meant
        ? new UsbtmcInterface(number, all.get(at + 7) == USB488_PROTOCOL, 0, 0, 0, 0)
        : null;
  }

  private UsbtmcInterface with(ByteBuffer all, int at) {
    int address = all.get(at + 2) & 0xFF;
    boolean in = (address & TOWARDS_COMPUTER) != 0;
    int transfer = all.get(at + 3) & 3;
    if (transfer == INTERRUPT && in) {
      return new UsbtmcInterface(number, usb488, bulkOut, bulkIn, address, packetBytes);
    }
    if (transfer != BULK) {
      return this;
    }
    int packet = all.getShort(at + 4) & PACKET_SIZE_BITS;
    return in
        ? new UsbtmcInterface(number, usb488, bulkOut, address, interruptIn, packet)
        : new UsbtmcInterface(number, usb488, address, bulkIn, interruptIn, packetBytes);
  }

  private boolean isWhole() {
    return bulkOut != 0 && bulkIn != 0 && packetBytes > 0;
  }
}

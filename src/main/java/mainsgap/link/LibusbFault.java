package mainsgap.link;

/** The error numbers of libusb 1.0. */
final class LibusbFault {
  static final int ACCESS = -3;
  static final int NO_DEVICE = -4;
  static final int NOT_FOUND = -5;
  static final int BUSY = -6;
  static final int TIMEOUT = -7;
  static final int OVERFLOW = -8;
  static final int PIPE = -9;
  static final int NOT_SUPPORTED = -12;

  private LibusbFault() {}

  /** What a transfer that failed means. */
  static UsbFault of(int error) {
    return switch (error) {
      case TIMEOUT -> new UsbFault(UsbFault.Kind.TIMEOUT, "time-out");
      case NO_DEVICE -> new UsbFault(UsbFault.Kind.GONE, "unplugged");
      case PIPE -> new UsbFault(UsbFault.Kind.STALLED, "stalled");
      case NOT_SUPPORTED -> new UsbFault(UsbFault.Kind.UNSUPPORTED, "no such request");
      case OVERFLOW -> new UsbFault(UsbFault.Kind.OTHER, "more came than was asked for");
      default -> new UsbFault(UsbFault.Kind.OTHER, "libusb error " + error);
    };
  }

  /** Why a device does not open. */
  static String whyNotOpen(int error) {
    return switch (error) {
      case ACCESS -> "you may not use it, or another program holds it";
      case BUSY -> "another program or a driver of the system holds it";
      case NO_DEVICE, NOT_FOUND -> "it has no driver that lets programs reach it, or it is gone";
      case NOT_SUPPORTED ->
          "it has no driver that lets programs reach it (on Windows, WinUSB has to be chosen for it)";
      default -> "libusb error " + error;
    };
  }
}

package mainsgap.link;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.locks.ReentrantLock;

/**
 * An instrument in use: one thread calls it, any thread may close it. A close during a call takes
 * effect when the call ends, since neither Linux nor libusb lets the device go under it. Faults
 * become sentences.
 */
final class OpenUsbtmc {
  private final ResourceName.Usb resource;
  private final UsbtmcDevice device;
  private final ReentrantLock use = new ReentrantLock();
  private volatile boolean closed;
  private boolean deviceClosed;

  OpenUsbtmc(ResourceName.Usb resource, UsbtmcDevice device) {
    this.resource = resource;
    this.device = device;
  }

  void send(byte[] message, int timeoutMillis) {
    boolean unused =
        run(
            () -> {
              device.send(message, timeoutMillis);
              return true;
            });
  }

  /** Empty where nothing came in the time allowed. */
  Optional<Received> receive(byte[] into, int timeoutMillis) {
    return run(
        () -> {
          try {
            return Optional.of(device.receive(into, timeoutMillis));
          } catch (UsbFault e) {
            if (e.kind() == UsbFault.Kind.TIMEOUT) {
              return Optional.empty();
            }
            throw e;
          }
        });
  }

  boolean resumes() {
    return device.resumes();
  }

  OptionalInt statusByte(int timeoutMillis) {
    return run(() -> device.statusByte(timeoutMillis));
  }

  void clear(int timeoutMillis) {
    boolean unused =
        run(
            () -> {
              device.clear(timeoutMillis);
              return true;
            });
  }

  /** The sentence for a wait that ended without anything. */
  LinkTimeoutException silent() {
    return new LinkTimeoutException(resource + " sent or took nothing in the time allowed");
  }

  /** From any thread. */
  void close() {
    closed = true;
    closeUnused();
  }

  /** One call of the device. */
  @FunctionalInterface
  private interface Call<T> {
    T make() throws UsbFault;
  }

  private <T> T run(Call<T> call) {
    use.lock();
    try {
      if (closed) {
        throw closedHere();
      }
      T result = call.make();
      if (closed) {
        throw closedHere();
      }
      return result;
    } catch (UsbFault e) {
      throw closed ? closedHere() : told(e);
    } finally {
      use.unlock();
      if (closed) {
        closeUnused();
      }
    }
  }

  private void closeUnused() {
    if (!use.tryLock()) {
      return;
    }
    try {
      if (!deviceClosed) {
        deviceClosed = true;
        device.close();
      }
    } finally {
      use.unlock();
    }
  }

  private LinkException told(UsbFault fault) {
    String what = String.valueOf(fault.getMessage());
    return switch (fault.kind()) {
      case TIMEOUT -> silent();
      case GONE ->
          new LinkClosedException(
              resource
                  + " is gone ("
                  + what
                  + "): look at the cable and at the instrument, then connect again",
              fault);
      case STALLED ->
          new LinkException(
              resource + " refused the transfer (" + what + "): it has to be cleared first", fault);
      case UNSUPPORTED, OTHER ->
          new LinkException(
              resource
                  + ": the USB transfer failed ("
                  + what
                  + "); if that comes again, switch the instrument off and on",
              fault);
    };
  }

  private LinkClosedException closedHere() {
    return new LinkClosedException(resource + " was closed by this program");
  }
}

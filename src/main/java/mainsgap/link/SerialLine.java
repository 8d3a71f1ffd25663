package mainsgap.link;

import com.fazecast.jSerialComm.SerialPort;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An open serial port, whose reads last a slice and whose writes can be given up: the operating
 * system lets both of them wait for ever.
 *
 * <p>The owner reads; a thread for each message writes; {@link #close()} may come from any thread.
 * Those that use the port share a lock, the one that closes it has it alone.
 */
final class SerialLine {
  static final int SLICE_MILLIS = 100;

  /** How often the port is asked for bytes: no read waits in the system, see {@link #read}. */
  private static final Duration ASKED_EVERY = Duration.ofMillis(1);

  /** A write that is given up ends after these many bytes at most. */
  private static final int WRITTEN_AT_ONCE = 256;

  private static final Duration CLOSING = Duration.ofSeconds(1);

  /** As long as the program holds the process back at its end to leave the bench safe. */
  private static final Duration LAST_WORDS = Duration.ofSeconds(15);

  private static final Duration LEAVING = Duration.ofMillis(100);
  private static final Duration LOOK = Duration.ofMillis(20);
  private static final Logger LOG = LoggerFactory.getLogger(SerialLine.class);
  private static final Set<SerialLine> OPEN = ConcurrentHashMap.newKeySet();
  private static final AtomicBoolean HOOKED = new AtomicBoolean();

  private final SerialPort port;
  private final ReentrantReadWriteLock use = new ReentrantReadWriteLock();
  private final AtomicInteger writers = new AtomicInteger();
  private final CountDownLatch closed = new CountDownLatch(1);
  private volatile boolean hasWritten;

  private SerialLine(SerialPort port) {
    this.port = port;
  }

  /** Opens the port; null where the driver refuses the port or the settings. */
  static @Nullable SerialLine open(String path, SerialSettings settings) {
    SerialPort port = SerialPort.getCommPort(path);
    port.setComPortParameters(
        settings.baud(), settings.dataBits(), stopBits(settings), parity(settings));
    port.setFlowControl(
        settings.flow() == SerialSettings.Flow.RTS_CTS
            ? SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED
            : SerialPort.FLOW_CONTROL_DISABLED);
    // a write ends when the bytes are on the line, not when the system has them: see close()
    port.setComPortTimeouts(
        SerialPort.TIMEOUT_NONBLOCKING | SerialPort.TIMEOUT_WRITE_BLOCKING, 0, 0);
    if (!port.openPort(0)) {
      LOG.debug("{} does not open: error {}", path, port.getLastErrorCode());
      return null;
    }
    keepOpenToTheLast();
    SerialLine line = new SerialLine(port);
    OPEN.add(line);
    return line;
  }

  /**
   * Waits a slice for bytes. Only bytes that are there are read: how long a read waits for others
   * is a setting of the terminal, and another program that opens it may take that setting away,
   * after which a read waits for ever.
   *
   * @return how many came, 0 where none did, -1 where the port is gone
   */
  int read(byte[] into) {
    use.readLock().lock();
    try {
      Deadline slice = Deadline.after(Duration.ofMillis(SLICE_MILLIS), Clock.system());
      int there = available();
      while (there == 0 && !slice.hasPassed()) {
        pause();
        there = available();
      }
      return there > 0 ? port.readBytes(into, Math.min(there, into.length)) : there;
    } finally {
      use.readLock().unlock();
    }
  }

  /** The closing ends it; an interrupt is kept for who handles it. */
  private void pause() {
    boolean interrupted = Thread.interrupted();
    try {
      boolean unused = closed.await(ASKED_EVERY.toNanos(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException e) {
      interrupted = true;
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** Negative where the port is gone: an adapter was pulled out, or the program closed it. */
  private int available() {
    return isClosed() ? -1 : port.bytesAvailable();
  }

  /** Writes until all is out, the port is gone or the writing is given up; whether all is out. */
  boolean write(byte[] message, StopRequest givenUp) {
    use.readLock().lock();
    writers.incrementAndGet();
    try {
      int done = 0;
      while (done < message.length && !isClosed() && !givenUp.isRequested()) {
        int bytes =
            port.writeBytes(message, Math.min(WRITTEN_AT_ONCE, message.length - done), done);
        if (bytes <= 0) {
          return false;
        }
        done += bytes;
      }
      return done == message.length;
    } finally {
      hasWritten = true;
      writers.decrementAndGet();
      use.readLock().unlock();
    }
  }

  /** Throws away what came in and was not read, and what has not gone out. */
  void discard() {
    use.readLock().lock();
    try {
      if (!isClosed()) {
        port.flushIOBuffers();
      }
    } finally {
      use.readLock().unlock();
    }
  }

  boolean isClosed() {
    return closed.getCount() == 0;
  }

  /**
   * Closes the port. The library throws away what is still on its way out, and the last message may
   * be the one that opens a relay: it gets the time to leave an adapter too, of whose buffer the
   * system knows nothing. A driver may hold the closing back: then it ends by itself.
   */
  void close() {
    if (isClosed()) {
      return;
    }
    if (writers.get() > 0) {
      discard(); // it waits for a peer that takes nothing
    }
    closed.countDown();
    Thread closing = new Thread(this::closePort, "serial-close");
    closing.setDaemon(true);
    closing.start();
    if (!Joined.within(closing, CLOSING)) {
      LOG.warn(
          "{} does not close: it may be taken until the program ends", port.getSystemPortPath());
    }
  }

  private void closePort() {
    use.writeLock().lock();
    try {
      if (hasWritten) {
        Clock.system().pause(LEAVING, new StopRequest());
      }
      port.closePort();
    } finally {
      use.writeLock().unlock();
      OPEN.remove(this);
    }
  }

  /**
   * The library closes every port as soon as the process is told to end. A relay on such a port may
   * still have to be switched off then: the library waits for those who use a port.
   */
  private static void keepOpenToTheLast() {
    if (HOOKED.compareAndSet(false, true)) {
      SerialPort.addShutdownHook(new Thread(SerialLine::awaitUsers, "serial-users"));
    }
  }

  private static void awaitUsers() {
    Deadline deadline = Deadline.after(LAST_WORDS, Clock.system());
    while (!OPEN.isEmpty() && !deadline.hasPassed()) {
      Clock.system().pause(LOOK, new StopRequest());
    }
  }

  private static int stopBits(SerialSettings settings) {
    return settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
  }

  private static int parity(SerialSettings settings) {
    return switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
    };
  }
}

package mainsgap.bench;

import mainsgap.arming.MainsSwitch;
import mainsgap.arming.MainsSwitchException;
import mainsgap.waiting.StopRequest;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Opens a commanded mains switch as soon as a stop is asked for, without waiting for the loop to
 * notice. When the first request returns the loop can close it no more; it is opened on a thread of
 * its own, as whoever asks must not be held up.
 */
final class EmergencyOff implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(EmergencyOff.class);

  private final MainsSwitch mains;
  private final StopRequest stop;
  private final Runnable onStop = this::turnOff;

  private EmergencyOff(MainsSwitch mains, StopRequest stop) {
    this.mains = mains;
    this.stop = stop;
  }

  /** From now on, until it is closed, a stop opens {@code mains}. */
  static EmergencyOff watching(MainsSwitch mains, StopRequest stop) {
    EmergencyOff watch = new EmergencyOff(mains, stop);
    if (mains.closedBy().isCommanded()) {
      stop.whenRequested(watch.onStop);
    }
    return watch;
  }

  @Override
  public void close() {
    stop.forget(onStop);
  }

  private void turnOff() {
    mains.closeNoMore();
    Thread thread = new Thread(this::open, "mains-off");
    thread.setDaemon(true);
    thread.start();
  }

  private void open() {
    try {
      mains.emergencyOff();
    } catch (MainsSwitchException e) {
      // The loop tries again at its end, and says so if that fails too.
      LOG.warn("{}", e.getMessage(), e);
    }
  }
}

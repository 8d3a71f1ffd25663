package mainsgap.scope;

import mainsgap.scpi.Identity;
import mainsgap.signal.Capture;

/**
 * An oscilloscope with its profile. One thread owns it. Every call ends within its time-out and
 * throws {@link ScopeException} with a sentence when the instrument complains, is silent or lies.
 */
public interface Oscilloscope extends AutoCloseable {

  /** Who the instrument says it is. */
  Identity identity();

  /** What its profile says that it can do. */
  ScopeLimits limits();

  /** Sends the plan's settings and checks what the instrument made of them. */
  void configure(CapturePlan plan);

  /** A recording of the live signal by the plan's settings, taken at once: at least two cycles. */
  Capture look();

  /**
   * Starts the planned acquisition and returns without waiting: follow it by {@link #state()},
   * which says {@link AcquisitionState#IDLE} until it has seen the acquisition run.
   */
  void arm();

  /**
   * Asks the instrument once for its state, and takes an acquisition one step on where the
   * instrument must be told: ask until it is {@link AcquisitionState#COMPLETE}.
   */
  AcquisitionState state();

  /** Reads the finished record. */
  Capture read();

  /** Stops any acquisition, so that the instrument is disarmed. */
  void disarm();

  /** Disarms where it can, and closes the link. Never throws. */
  @Override
  void close();
}

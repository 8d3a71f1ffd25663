package mainsgap.simulation;

import java.util.ArrayDeque;
import java.util.Deque;

/** Error queue and status registers of IEEE 488.2. Safe for all threads. */
final class StatusRegisters {
  static final int OPERATION_COMPLETE = 1;
  private static final int QUEUE_LIMIT = 16;
  private static final int POWER_ON = 1 << 7;
  private static final int ERROR_AVAILABLE = 1 << 2;
  private static final int EVENT_SUMMARY = 1 << 5;
  private static final int MASTER_SUMMARY = 1 << 6;

  private final FaultSwitch faults;
  private final Deque<ScpiError> errors = new ArrayDeque<>();
  private int events = POWER_ON;
  private int eventEnable;
  private int requestEnable;

  StatusRegisters(FaultSwitch faults) {
    this.faults = faults;
  }

  /** Keeps an error; the last place of a full queue tells of the overflow. */
  synchronized void add(ScpiError error) {
    events |= error.eventBit();
    if (errors.size() < QUEUE_LIMIT) {
      errors.addLast(error);
    } else {
      errors.removeLast();
      errors.addLast(ScpiError.QUEUE_OVERFLOW);
      events |= ScpiError.QUEUE_OVERFLOW.eventBit();
    }
  }

  /** The oldest error, taken from the queue, or that there is none. */
  synchronized String nextError() {
    ScpiError error = errors.pollFirst();
    String reply = error == null ? "0,\"No error\"" : error.reply();
    if (!faults.has(ScopeQuirk.SIGNED_QUOTED_ERRORS)) {
      return reply;
    }
    return (error == null ? "+" : "") + reply.replace('"', '\'');
  }

  synchronized void raise(int eventBit) {
    events |= eventBit;
  }

  synchronized int takeEvents() {
    int taken = events;
    events = 0;
    return taken;
  }

  synchronized int statusByte() {
    int status = errors.isEmpty() ? 0 : ERROR_AVAILABLE;
    if ((events & eventEnable) != 0) {
      status |= EVENT_SUMMARY;
    }
    return (status & requestEnable) == 0 ? status : status | MASTER_SUMMARY;
  }

  synchronized void clear() {
    errors.clear();
    events = 0;
  }

  synchronized int eventEnable() {
    return eventEnable;
  }

  synchronized void enableEvents(int mask) {
    eventEnable = mask;
  }

  synchronized int requestEnable() {
    return requestEnable;
  }

  synchronized void enableRequests(int mask) {
    requestEnable = mask & ~MASTER_SUMMARY;
  }
}

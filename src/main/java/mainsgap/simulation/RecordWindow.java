package mainsgap.simulation;

import java.util.Arrays;

/** The part of a record that is sent, counted from 1, the last point included. */
final class RecordWindow {
  private final ScopeCore core;
  private final int mostAtOnce;
  private int first = 1;
  private int last = 1000;

  RecordWindow(ScopeCore core, int mostAtOnce) {
    this.core = core;
    this.mostAtOnce = mostAtOnce;
  }

  void setDefaults() {
    first = 1;
    last = 1000;
  }

  void setFirst(int point) {
    first = point;
  }

  void setLast(int point) {
    last = point;
  }

  ScopeRecord record() {
    return core.record().orElseThrow(() -> new ScpiFault(ScpiError.DATA_STALE));
  }

  int first() {
    return first;
  }

  /** The last point, not beyond the record: a window that is too wide means all of it. */
  int last() {
    return Math.min(last, record().plan().points());
  }

  int points() {
    return Math.max(0, last() - first + 1);
  }

  /** The codes in the window, where it holds any and not too many. */
  short[] codes(int channel) {
    if (points() < 1 || points() > mostAtOnce) {
      throw new ScpiFault(ScpiError.SETTINGS_CONFLICT);
    }
    return Arrays.copyOfRange(record().codes(channel), first - 1, last());
  }
}

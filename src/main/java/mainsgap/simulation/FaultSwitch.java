package mainsgap.simulation;

import java.util.Set;

/** What the scopes of a bench do wrong, as it stands now. Safe for all threads. */
final class FaultSwitch {
  private static final double CLIPPING_SHARE = 0.25;

  private final Set<ScopeQuirk> quirks;
  private volatile ScopeFault fault;

  FaultSwitch(ScopeFault fault, Set<ScopeQuirk> quirks) {
    this.fault = fault;
    this.quirks = Set.copyOf(quirks);
  }

  boolean has(ScopeQuirk quirk) {
    return quirks.contains(quirk);
  }

  ScopeFault now() {
    return fault;
  }

  void turnTo(ScopeFault other) {
    fault = other;
  }

  /** The span of a range that was asked for, or what becomes of it. */
  double spanOf(double askedVolts) {
    return now() == ScopeFault.CLIPPING_RANGE ? askedVolts * CLIPPING_SHARE : askedVolts;
  }

  /** The answer to a query for numbers, or a word. */
  Reply numbers(String text) {
    return Reply.text(now() == ScopeFault.TEXT_FOR_NUMBER ? "nonsense" : text);
  }

  Reply number(double number) {
    return numbers(Nr3.of(number));
  }

  Reply number(int number) {
    return numbers(Integer.toString(number));
  }

  /** Returns where an acquisition may be started. */
  void allowStart() {
    if (now() == ScopeFault.ANSWERS_WITH_ERROR) {
      throw new ScpiFault(ScpiError.SETTINGS_CONFLICT);
    }
  }
}

package mainsgap.simulation;

/** The mains of the bench as its commanded switches move it. Safe for all threads. */
final class CommandedMains {
  private final PowerSide power;
  private volatile SwitchFault fault = SwitchFault.NONE;

  CommandedMains(PowerSide power) {
    this.power = power;
  }

  SwitchFault fault() {
    return fault;
  }

  void turnTo(SwitchFault other) {
    fault = other;
  }

  void close() {
    power.takeCommand();
    if (fault == SwitchFault.NONE) {
      power.closeMains();
    }
  }

  void open() {
    power.takeCommand();
    if (fault == SwitchFault.NONE) {
      power.openMains();
    }
  }

  /** Opens cleanly at an angle of the mains. */
  void openAt(double degrees) {
    power.takeCommand();
    if (fault == SwitchFault.NONE) {
      power.openMainsAt(degrees);
    }
  }

  boolean isClosed() {
    return power.isMainsClosed();
  }
}

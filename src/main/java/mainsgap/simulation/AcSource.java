package mainsgap.simulation;

/**
 * An invented AC source that feeds the unit: its output is the mains switch. Besides the OUTPut
 * subsystem of SCPI-1999 it has a command of its own that opens at an angle.
 */
final class AcSource implements Instrument.Dialect {
  private final CommandedMains mains;
  private final String serial;

  AcSource(CommandedMains mains, String serial) {
    this.mains = mains;
    this.serial = serial;
  }

  @Override
  public String identity() {
    return "Mainsgap,Simulated AC source," + serial + ",1.0";
  }

  @Override
  public void addTo(CommandTable table) {
    table
        .command("OUTPut[:STATe]", this::switchTo)
        .query("OUTPut[:STATe]?", call -> state())
        .command("OUTPut:OFF:ANGLe", this::openAt);
  }

  @Override
  public void reset() {
    // After power-on the output of a source is off.
    mains.open();
  }

  @Override
  public boolean isPending() {
    return false;
  }

  @Override
  public void finishPending() {
    // Its relay is quick: nothing is ever pending.
  }

  private void switchTo(Call call) {
    boolean on = call.onOrOff();
    refuseWhereFaulty();
    if (on) {
      mains.close();
    } else {
      mains.open();
    }
  }

  private void openAt(Call call) {
    double degrees = call.number(0, 360);
    refuseWhereFaulty();
    mains.openAt(degrees);
  }

  private Reply state() {
    return Reply.number(mains.isClosed() ? 1 : 0);
  }

  private void refuseWhereFaulty() {
    if (mains.fault() == SwitchFault.ANSWERS_WITH_ERROR) {
      throw new ScpiFault(ScpiError.SETTINGS_CONFLICT);
    }
  }
}

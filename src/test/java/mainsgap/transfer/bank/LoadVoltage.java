package mainsgap.transfer.bank;

/** The voltage at the load in closed form: which of the waveforms feeds it at each time. */
final class LoadVoltage {
  private final Rig rig;
  private final double lossSeconds;
  private final double returnSeconds;
  private final Mains mains;
  private final DisturbedMains disturbed;
  private final Remnant remnant;
  private final Inverter inverter;

  LoadVoltage(Rig rig) {
    this(rig, rig.lossSeconds(), rig.returnSeconds());
  }

  /**
   * The same rig, had it lost mains or got its output at other instants: bounces and further breaks
   * stay where they are, since they tell nothing of those.
   */
  LoadVoltage(Rig rig, double lossSeconds, double returnSeconds) {
    this.rig = rig;
    this.lossSeconds = lossSeconds;
    this.returnSeconds = returnSeconds;
    this.mains = new Mains(rig);
    this.disturbed = new DisturbedMains(rig);
    this.remnant = new Remnant(rig, mains, lossSeconds);
    this.inverter = new Inverter(rig, returnSeconds);
  }

  double voltsAt(double seconds) {
    return base(seconds) + notchShare(seconds) * fed(seconds);
  }

  /** Notches stand still in the cycle of what feeds the load. */
  private double notchShare(double seconds) {
    double degrees =
        seconds < returnSeconds ? mains.degreesAt(seconds) : inverter.degreesAt(seconds);
    double halves = (degrees + rig.notchDegrees) / 180;
    double into = (halves - Math.floor(halves)) / (2 * rig.nominalHertz);
    return into < rig.notchSeconds ? rig.notchShare : 1;
  }

  /** Whether the output has steps and lies at zero, when it returns and up to the next of them. */
  boolean isAtRestAtReturn() {
    return rig.shape != Rig.Shape.SINE && inverter.voltsAt(returnSeconds) == 0;
  }

  /** Mains downstream of its switch. */
  double mainsVoltsAt(double seconds) {
    return base(seconds) + (seconds < lossSeconds ? mains.voltsAt(seconds) : 0);
  }

  private double base(double seconds) {
    return rig.peakVolts()
        * (rig.offsetShare
            + rig.driftSharePerSecond * seconds
            + rig.pickupShare * Math.sin(2 * Math.PI * rig.mainsHertz * seconds));
  }

  private double fed(double seconds) {
    if (rig.outputNeverLeaves) {
      return inverter.voltsAt(seconds);
    }
    if (seconds < lossSeconds || isMadeAgain(seconds - rig.lossSeconds())) {
      return disturbed.voltsAt(seconds, mains.voltsAt(seconds));
    }
    if (seconds >= returnSeconds) {
      return isSecondBreak(seconds - rig.returnSeconds()) ? 0 : inverter.voltsAt(seconds);
    }
    if (isMadeBefore(rig.returnSeconds() - seconds)) {
      return inverter.voltsAt(seconds);
    }
    return remnant.voltsAt(seconds) + dischargeVolts(seconds);
  }

  /** What is left of the voltage at which the output's contact broke last. */
  private double dischargeVolts(double seconds) {
    double volts = 0;
    for (int k = 1; k < rig.makeBounces.length; k += 2) {
      double broken = rig.returnSeconds() - rig.makeBounces[k];
      if (rig.dischargeSeconds > 0 && seconds > broken) {
        volts = inverter.voltsAt(broken) * Math.exp((broken - seconds) / rig.dischargeSeconds);
      }
    }
    return volts;
  }

  private boolean isMadeAgain(double since) {
    boolean made = false;
    for (double change : rig.breakBounces) {
      made ^= since >= change;
    }
    return made && since < rig.gapSeconds;
  }

  private boolean isMadeBefore(double toReturn) {
    boolean made = false;
    for (double change : rig.makeBounces) {
      made ^= toReturn <= change;
    }
    return made;
  }

  private boolean isSecondBreak(double since) {
    double into = since - rig.secondBreakAfterSeconds;
    return into >= 0 && into < rig.secondBreakSeconds;
  }
}

package mainsgap.transfer.bank;

/**
 * What is on the load while nothing feeds it: the arc while it burns, then nothing, the loss's
 * voltage decaying {@code v0 e^(-s/T)}, a held level, or a motor's back-EMF {@code share peak
 * e^(-s/T) sin(2 pi f s + a0)} whose frequency slips, or a share of mains that a capacitor across
 * the open switch lets through, ahead of it; s is the time since the loss.
 */
final class Remnant {
  private final Rig rig;
  private final Mains mains;
  private final double lossSeconds;

  Remnant(Rig rig, Mains mains, double lossSeconds) {
    this.rig = rig;
    this.mains = mains;
    this.lossSeconds = lossSeconds;
  }

  double voltsAt(double seconds) {
    double since = seconds - lossSeconds;
    if (rig.arcSeconds > 0 && seconds < rig.lossSeconds() + rig.arcSeconds) {
      return behindArc(mains.voltsAt(seconds));
    }
    return switch (rig.left) {
      case NOTHING -> 0;
      case DECAY -> mains.voltsAt(lossSeconds) * Math.exp(-since / rig.leftDecaySeconds);
      case HELD -> rig.peakVolts() * rig.leftShare;
      case COUPLED ->
          rig.peakVolts()
              * rig.leftShare
              * Math.sin(
                  2 * Math.PI * rig.mainsHertz * (seconds - rig.lossSeconds())
                      + Math.toRadians(rig.lossDegrees + rig.leftDegrees));
      case MOTOR ->
          rig.peakVolts()
              * rig.leftShare
              * Math.exp(-since / rig.leftDecaySeconds)
              * Math.sin(
                  2 * Math.PI * rig.leftHertz * since
                      + Math.toRadians(rig.lossDegrees + rig.leftDegrees));
    };
  }

  /** The arc takes its voltage from the load's, whichever way the current flows. */
  private double behindArc(double mainsVolts) {
    return Math.signum(mainsVolts) * Math.max(0, Math.abs(mainsVolts) - rig.arcVolts);
  }
}

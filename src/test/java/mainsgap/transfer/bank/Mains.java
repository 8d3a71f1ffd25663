package mainsgap.transfer.bank;

/**
 * The supply before: {@code peak (sin a + sum h_k sin(k a + k - 2))}, a = 2 pi f (t - loss) + a0;
 * at another height and angle before it steps.
 */
final class Mains {
  private final Rig rig;

  Mains(Rig rig) {
    this.rig = rig;
  }

  double degreesAt(double seconds) {
    return 360 * rig.mainsHertz * (seconds - rig.lossSeconds()) + rig.lossDegrees;
  }

  double voltsAt(double seconds) {
    double angle = Math.toRadians(degreesAt(seconds));
    boolean isBeforeStep =
        rig.stepBeforeSeconds > 0 && seconds < rig.lossSeconds() - rig.stepBeforeSeconds;
    return isBeforeStep
        ? rig.stepShare * voltsAtAngle(angle + Math.toRadians(rig.stepDegrees))
        : voltsAtAngle(angle);
  }

  private double voltsAtAngle(double angle) {
    double share = Math.sin(angle);
    for (int k = 0; k < rig.mainsHarmonics.length; k++) {
      if (rig.mainsHarmonics[k] != 0) {
        share += rig.mainsHarmonics[k] * Math.sin((k + 2) * angle + k);
      }
    }
    return rig.peakVolts() * share;
  }
}

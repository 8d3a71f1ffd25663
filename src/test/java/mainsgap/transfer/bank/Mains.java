package mainsgap.transfer.bank;

/**
 * The supply before: {@code peak (sin a + sum h_k sin(k a + k - 2))}, a = 2 pi f (t - loss) + a0.
 */
final class Mains {
  private final Rig rig;

  Mains(Rig rig) {
    this.rig = rig;
  }

  double voltsAt(double seconds) {
    double angle =
        2 * Math.PI * rig.mainsHertz * (seconds - rig.lossSeconds())
            + Math.toRadians(rig.lossDegrees);
    double share = Math.sin(angle);
    for (int k = 0; k < rig.mainsHarmonics.length; k++) {
      if (rig.mainsHarmonics[k] != 0) {
        share += rig.mainsHarmonics[k] * Math.sin((k + 2) * angle + k);
      }
    }
    return rig.peakVolts() * share;
  }
}

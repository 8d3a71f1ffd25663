package mainsgap.transfer.bank;

/**
 * The supply after: {@code peak share (g(s) shape(a) - ring(s) + ripple(t))}, s the time since the
 * return. Its angle runs freely, so that it does not move with the instant of the return; its start
 * and its ring do.
 */
final class Inverter {
  private final Rig rig;
  private final double makeSeconds;

  Inverter(Rig rig, double makeSeconds) {
    this.rig = rig;
    this.makeSeconds = makeSeconds;
  }

  double degreesAt(double seconds) {
    return 360 * cycles(seconds - rig.returnSeconds()) + rig.outputDegreesAtReturn;
  }

  double voltsAt(double seconds) {
    double since = Math.max(0, seconds - makeSeconds);
    boolean isStepped =
        rig.outputStepAfterSeconds > 0
            && seconds - rig.returnSeconds() >= rig.outputStepAfterSeconds;
    double height = isStepped ? rig.outputStepShare : 1;
    double angle = Math.toRadians(degreesAt(seconds) + (isStepped ? rig.outputStepDegrees : 0));
    double ripple = rig.rippleShare * Math.sin(2 * Math.PI * rig.rippleHertz * seconds);
    return rig.peakVolts()
        * rig.outputShare
        * height
        * (amplitude(since) * shape(angle) - ring(since) + ripple);
  }

  private double cycles(double since) {
    if (rig.walkHertzPerSecond == 0 || since < 0) {
      return rig.outputHertz * since;
    }
    double way = rig.mainsHertz - rig.outputHertz;
    double walked = Math.min(since, Math.abs(way) / rig.walkHertzPerSecond);
    double rate = Math.signum(way) * rig.walkHertzPerSecond;
    return rig.outputHertz * walked
        + rate * walked * walked / 2
        + rig.mainsHertz * (since - walked);
  }

  private double amplitude(double since) {
    return switch (rig.start) {
      case AT_ONCE -> 1;
      case SOFT -> 1 - Math.exp(-since / rig.startSeconds);
      case RAMP -> Math.min(1, since / rig.startSeconds);
    };
  }

  private double ring(double since) {
    return rig.ringShare == 0
        ? 0
        : rig.ringShare
            * Math.exp(-since / rig.ringDecaySeconds)
            * Math.cos(2 * Math.PI * rig.ringHertz * since + Math.toRadians(rig.ringDegrees));
  }

  private double shape(double angle) {
    double cycles = angle / (2 * Math.PI);
    double phase = cycles - Math.floor(cycles);
    return switch (rig.shape) {
      case SINE -> Math.sin(angle);
      case QUASI_SQUARE -> quasiSquare(phase);
      case STEPPED -> Math.round(3 * Math.sin(2 * Math.PI * phase)) / 3.0;
    };
  }

  /** A quarter of the cycle each at the top, at rest, at the bottom and at rest. */
  private static double quasiSquare(double phase) {
    if (phase >= 0.125 && phase < 0.375) {
      return 1;
    }
    return phase >= 0.625 && phase < 0.875 ? -1 : 0;
  }
}

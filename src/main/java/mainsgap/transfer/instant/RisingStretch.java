package mainsgap.transfer.instant;

import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.edge.Rise;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;

/**
 * Samples in which a supply comes up out of a residue.
 *
 * @param residue what was left on the load
 * @param after the supply once it has risen
 * @param from the first sample, in the residue
 * @param to one after the last sample, where the supply has nearly risen
 */
record RisingStretch(Recording recording, Residue residue, Supply after, int from, int to) {
  /** Enough for the harmonics of an inverter that starts softly. */
  private static final int ORDERS = 15;

  /** A supply that has risen but for less than this is fitted as well as it can be. */
  private static final double RISEN_BUT_FOR = 2e-4;

  double firstSeconds() {
    return recording.time().secondsAt(from);
  }

  /** The supply has come by the middle of the stretch up to its own fit. */
  double latestSeconds() {
    return recording.time().secondsAt(to - recording.samplesPerCycle() / 2);
  }

  /** In about so many blocks. */
  RiseFit inBlocks(int blocks) {
    return new RiseFit(this, Math.max(1, (to - from) / blocks));
  }

  RisingStretch from(Residue other) {
    return new RisingStretch(recording, other, after, from, to);
  }

  /**
   * The stretch with the supply fitted anew to samples from which the rise is taken out: what of it
   * was left there lies in the offset and the harmonics of the first fit.
   */
  RisingStretch risenBy(Rise rise, double seconds, double riseSeconds) {
    TimeAxis time = recording.time();
    if (1 - rise.at(time.secondsAt(after.from()) - seconds, riseSeconds) < RISEN_BUT_FOR) {
      return this;
    }
    int length = after.to() - after.from();
    double offset = after.harmonics().offsetVolts();
    double[] risen = new double[length];
    for (int i = 0; i < length; i++) {
      double since = time.secondsAt(after.from() + i) - seconds;
      double above = recording.volts()[after.from() + i] - offset;
      risen[i] = offset + above / rise.at(since, riseSeconds);
    }
    TimeAxis ownTime =
        new TimeAxis(
            time.secondsAt(after.from()), time.intervalSeconds(), length, time.timeBasePpm());
    double hertz = after.model().frequencyHertz();
    HarmonicModel fitted = HarmonicFit.fit(risen, ownTime, 0, length, hertz, ORDERS, true);
    Supply supply = new Supply(fitted, fitted, after.from(), after.to());
    return new RisingStretch(recording, residue, supply, from, to);
  }
}

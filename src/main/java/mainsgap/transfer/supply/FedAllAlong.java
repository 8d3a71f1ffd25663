package mainsgap.transfer.supply;

/**
 * Holds it against the samples that a load was fed all along by a supply and the one that took over
 * from it: about the change each average lies at one of the two, and from there on each cycle is as
 * the one before.
 */
public final class FedAllAlong {
  /** Where a supply steps or is vague, its samples lie within so many of their spreads there. */
  private static final double VAGUE_SPREADS = 3;

  private final Recording recording;
  private final Supply before;
  private final Supply after;

  /** From a cycle before the change to a cycle behind it, and where the new supply has settled. */
  private final int from;

  private final int settled;

  public FedAllAlong(Recording recording, Supply before, Supply after) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    int cycle = (int) Math.ceil(recording.samplesPerCycle());
    this.from = Math.max(0, before.to() - cycle);
    this.settled = Math.min(recording.length(), Math.max(before.to(), after.from()) + cycle);
  }

  /** The first sample about the change that lies at neither supply; -1 where there is none. */
  public int leftByBoth() {
    int width = Departure.averagingSamples(recording);
    boolean isOver = false;
    for (int i = from; i + width <= settled; i += width) {
      double fromBefore = awayVolts(before, i, width);
      double fromAfter = awayVolts(after, i, width);
      if (fromBefore != 0 && fromAfter != 0) {
        // one average, in which the one goes over to the other, lies between them
        if (isOver || fromBefore * fromAfter > 0) {
          return i;
        }
        isOver = true;
      }
    }
    return -1;
  }

  /** The first sample later on at which a cycle is not as the one before; -1 where none is. */
  public int changedAgain() {
    double period = recording.time().sampleRateHertz() / after.harmonics().frequencyHertz();
    return Departure.find(recording, settled, recording.length(), period, mostVolts(after));
  }

  /** How far an average lies from a supply; 0 where no more than it may. */
  private double awayVolts(Supply supply, int first, int width) {
    double mean = 0;
    for (double deviation : supply.deviationsIn(recording, first, first + width)) {
      mean += deviation / width;
    }
    double middle = recording.time().secondsAt(first + (width - 1) / 2.0);
    boolean isVague = supply.isVagueInPlaces() || supply.hasSteps();
    double vague = isVague ? VAGUE_SPREADS * supply.model().spreadVoltsAt(middle) : 0;
    return Math.abs(mean) > Math.max(vague, mostVolts(supply)) ? mean : 0;
  }

  private double mostVolts(Supply supply) {
    double noise = SampleNoise.atMost(recording, supply.usualSpreadVolts());
    return Departure.thresholdVolts(recording, noise);
  }
}

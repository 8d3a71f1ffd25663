package mainsgap.transfer.gap;

import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.ResidueFit;

/**
 * How far a record shows a gap whose return it does not tell: up to the last sample that the
 * residue still explains, less what could hide in the noise there. A voltage that comes back too
 * near to the record's end to be measured ends it all the same: it is never told later than it is.
 */
final class ShownGap {
  /**
   * The residue may overrun a make by a fourth: what lies before this share of it is dead for sure.
   */
  private static final double DEAD_SHARE = 0.6;

  /** What an arc leaves at the start says nothing of the residue's own error. */
  private static final double SETTLED_SHARE = 0.3;

  /** Averages of noise stay within so many of their standard deviations. */
  private static final double NOISES = 4;

  /** Hum and quantisation that the noise of the supply before does not tell. */
  private static final double LEAST_BAND_SHARE_OF_PEAK = 0.003;

  /** A residue that misses the samples it was fitted to may miss the next ones by more. */
  private static final double MISFITS = 1.5;

  /** No residue is so wrong that more than this is not seen. */
  private static final double MOST_BAND_SHARE_OF_PEAK = 0.05;

  /** A drift stays below this; a supply that is back goes beyond it, or the record ends. */
  private static final double BACK_SHARE_OF_PEAK = 0.06;

  /** Longer than the crossing of a residue takes, of a supply with a tenth of its amplitude. */
  private static final double MOMENT_SECONDS = 2e-3;

  /**
   * A voltage that rises softly, from any angle, was hidden for no longer than it takes to grow so.
   */
  private static final double GROWN = 16;

  /** Each round shows some more of a decay or a swing, the first ones the most. */
  private static final int MOST_ROUNDS = 8;

  /** Fewer fix no residue. */
  private static final int FEWEST_SAMPLES = 4;

  /** Supplies from whose crossings the hidden time is taken, one a degree. */
  private static final int ANGLES = 360;

  /** Samples from the first after the last opening (inclusive) to another (exclusive). */
  private record Dead(int from, int to) {}

  private final Recording recording;
  private final Residue residue;
  private final int width;
  private final Dead dead;
  private final double band;

  /**
   * Looks at a gap.
   *
   * @param noiseVolts the standard deviation of one sample's noise
   * @param dead the samples in which nothing feeds the load for sure
   */
  private ShownGap(Recording recording, double noiseVolts, Dead dead) {
    this(recording, fitted(recording, noiseVolts, dead), noiseVolts, dead);
  }

  private ShownGap(Recording recording, Residue residue, double noiseVolts, Dead dead) {
    this.recording = recording;
    this.residue = residue;
    this.width = Departure.averagingSamples(recording);
    this.dead = dead;
    this.band = band(noiseVolts);
  }

  private static Residue fitted(Recording recording, double noiseVolts, Dead dead) {
    double tight = Math.max(noiseVolts, LEAST_BAND_SHARE_OF_PEAK * recording.peakVolts());
    return ResidueFit.fit(recording, settled(dead), dead.to(), tight);
  }

  /**
   * Where the gap that began with the last opening is no longer shown.
   *
   * @param residue what is left on the load: bent towards a return that its stretch overruns, so
   *     that it is fitted anew, to what lies before for sure, and then to all that this shows
   */
  static End end(Recording recording, Residue residue, double noiseVolts, double openedSeconds) {
    int opened = (int) Math.max(0, Math.ceil(recording.time().indexAt(openedSeconds)));
    int explained = Math.min(recording.length(), residue.explainedTo()) - opened;
    Dead dead = new Dead(opened, opened + (int) (DEAD_SHARE * explained));
    if (dead.to() - opened < FEWEST_SAMPLES) {
      double shown = recording.time().secondsAt(Math.max(opened, dead.to()) - 1);
      boolean isBack = residue.explainedTo() < recording.length();
      return new End(Math.max(openedSeconds, shown), isBack);
    }
    ShownGap asFound = new ShownGap(recording, residue, noiseVolts, dead);
    int left = asFound.firstLeft();
    if (left >= 0 && asFound.isStep(left)) {
      return asFound.end();
    }
    End end = new ShownGap(recording, noiseVolts, dead).end();
    for (int round = 0; round < MOST_ROUNDS && end.isBack(); round++) {
      int shownTo = (int) recording.time().indexAt(end.seconds());
      if (shownTo <= dead.to()) {
        break;
      }
      dead = new Dead(opened, shownTo);
      End further = new ShownGap(recording, noiseVolts, dead).end();
      end = further.seconds() > end.seconds() ? further : end;
    }
    return end;
  }

  private static int settled(Dead dead) {
    return dead.from() + (int) (SETTLED_SHARE * (dead.to() - dead.from()));
  }

  /**
   * The end of what is shown.
   *
   * @param seconds on the capture's own time axis
   * @param isBack whether a voltage comes back after it, too late to be measured
   */
  record End(double seconds, boolean isBack) {}

  private End end() {
    int left = firstLeft();
    boolean isBack = left >= 0;
    int last = isBack ? left - 1 : recording.length() - 1;
    int hidden = 0;
    if (!isBack || !isStep(left)) {
      hidden = Math.max(hiddenByCrossing(last), isBack ? hiddenByRise(left) : 0);
    }
    return new End(recording.time().secondsAt(Math.max(dead.from(), last - hidden)), isBack);
  }

  private double apart(int index) {
    return recording.volts()[index] - residue.voltsAt(recording.time().secondsAt(index));
  }

  /**
   * The deviations from the residue, each averaged with those after it, for one walk: a record
   * without a return may be long, so none is kept.
   */
  private final class Averages {
    private int first;
    private double sum;

    Averages(int first) {
      this.first = first;
      for (int i = first; i < first + width; i++) {
        sum += apart(i);
      }
    }

    double volts() {
      return Math.abs(sum / width);
    }

    void back() {
      first--;
      sum += apart(first) - apart(first + width);
    }

    void on() {
      sum += apart(first + width) - apart(first);
      first++;
    }
  }

  private double band(double noiseVolts) {
    double misfit = 0;
    int to = Math.min(dead.to(), recording.length() - width);
    int from = settled(dead);
    if (from < to) {
      Averages averages = new Averages(from);
      for (int i = from; i < to; i++) {
        misfit = Math.max(misfit, averages.volts());
        averages.on();
      }
    }
    double peak = recording.peakVolts();
    double noise = NOISES * noiseVolts / Math.sqrt(width);
    double least = Math.max(noise, LEAST_BAND_SHARE_OF_PEAK * peak);
    return Math.max(least, Math.min(MISFITS * misfit, MOST_BAND_SHARE_OF_PEAK * peak));
  }

  /**
   * Where the averages leave the residue, looked for backwards from one that is far away; -1 where
   * none is. A voltage that rises slowly passes through the residue again, for a moment.
   */
  private int firstLeft() {
    double back = Math.max(BACK_SHARE_OF_PEAK * recording.peakVolts(), 2 * band);
    int moment = recording.samplesIn(MOMENT_SECONDS);
    int last = recording.length() - width;
    if (last < dead.to()) {
      return -1;
    }
    Averages averages = new Averages(last);
    int first = averages.volts() > band ? last : -1;
    for (int i = last - 1; i >= dead.to(); i--) {
      averages.back();
      boolean isPart = first >= 0 && first - i <= moment;
      if (averages.volts() > (isPart ? band : back)) {
        first = i;
      }
    }
    return first;
  }

  /** Whether the voltage leaves faster than two supplies part that cross: then none was hidden. */
  private boolean isStep(int left) {
    int after = left + width;
    if (after + width > recording.length()) {
      return false;
    }
    double omega = 2 * Math.PI * recording.task().nominalFrequencyHertz();
    double seconds = 2 * width * recording.time().intervalSeconds();
    double most = band + 2 * omega * recording.peakVolts() * seconds;
    return new Averages(after).volts() > most;
  }

  /** The longest for which a supply that crosses the residue before {@code last} stays unseen. */
  private int hiddenByCrossing(int last) {
    double omega = 2 * Math.PI * recording.task().nominalFrequencyHertz();
    int longest = 0;
    for (int degrees = 0; degrees < ANGLES; degrees++) {
      int hidden = 0;
      while (last - hidden > dead.from()
          && Math.abs(
                  recording.peakVolts()
                          * Math.sin(
                              Math.toRadians(degrees)
                                  - omega * hidden * recording.time().intervalSeconds())
                      - residue.voltsAt(recording.time().secondsAt(last - hidden)))
              <= band) {
        hidden++;
      }
      longest = Math.max(longest, hidden);
    }
    return longest;
  }

  /** A slow rise has begun long before it shows. */
  private int hiddenByRise(int left) {
    Averages averages = new Averages(left);
    int grown = left;
    while (grown + width < recording.length() && averages.volts() < GROWN * band) {
      averages.on();
      grown++;
    }
    return grown - left;
  }
}

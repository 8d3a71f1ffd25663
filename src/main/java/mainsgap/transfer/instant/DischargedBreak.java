package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Finds where a contact that has made opens once more while the load keeps its voltage for some
 * time: no sample lies at the residue, and a make at a crossing of the supply shows no step. What
 * tells such a break is that the voltage leaves the supply for a discharge towards the residue,
 * which explains it to the noise.
 */
final class DischargedBreak {
  /** The deviation from the supply is looked at in means over this. */
  private static final double MEAN_SECONDS = 60e-6;

  private static final double APART_SHARE_OF_PEAK = 0.015;
  private static final double APART_NOISES = 4.5;

  /** A shorter deviation is no break (own choice). */
  private static final double SHORTEST_SECONDS = 0.12e-3;

  /** Of so many means the outer ones, in which the contact opens and makes, are left out. */
  private static final int FEWEST_MEANS = 6;

  private static final int FEWEST_SAMPLES = 4;

  private static final double DECAY_RATIO = 1.15;
  private static final double FINE_DECAY_RATIO = 1.01;

  /** A discharge that explains leaves no more than the noise, and a little. */
  private static final double EXPLAINED_NOISES = 1.4;

  private static final double EXPLAINED_SHARE_OF_PEAK = 0.001;

  /** The supply explains the same samples worse by this, and than it explains its own cycles. */
  private static final double WORSE = 2.2;

  /** The contact opened so long before, at most, where the discharge is surely seen. */
  private static final double OPENED_SECONDS = 0.6e-3;

  /** So many means before it is seen away the contact has opened. */
  private static final int OPENED_MEANS = 6;

  /** A load discharges from no more than what fed it. */
  private static final double MOST_OF_SUPPLY = 1.2;

  private final Recording recording;
  private final Residue residue;
  private final Supply after;
  private final double noiseVolts;
  private final int width;

  DischargedBreak(Recording recording, Residue residue, Supply after, double noiseVolts) {
    this.recording = recording;
    this.residue = residue;
    this.after = after;
    this.noiseVolts = noiseVolts;
    this.width = Math.max(1, recording.samplesIn(MEAN_SECONDS));
  }

  /** The last one while the contact may bounce after a make; null where there is none. */
  @Nullable OpenedAgain lastAfter(Edge made) {
    int start = (int) Math.ceil(recording.time().indexAt(made.seconds()));
    int end =
        Math.min(recording.length(), start + recording.samplesIn(OpenedAgain.BOUNCES_SECONDS));
    int means = Math.max(0, (end - start) / width);
    int[] signs = new int[means];
    for (int k = 0; k < means; k++) {
      signs[k] = sign(start + k * width);
    }
    int to = means;
    while (to > 1) {
      int from = to - 1;
      while (from > 0 && signs[from - 1] == signs[to - 1]) {
        from--;
      }
      // fed before and after it: what deviates from the make on is the shape of the arrival
      boolean isBetween = from > 0 && signs[from - 1] == 0 && (to == means || signs[to] == 0);
      if (signs[to - 1] != 0 && isBetween && !isRing(signs, from)) {
        OpenedAgain found = discharge(made, start + from * width, start + to * width);
        if (found != null) {
          return found;
        }
      }
      to = from;
    }
    return null;
  }

  /** A ring has swung to the other side just before. */
  private boolean isRing(int[] signs, int index) {
    int swing = recording.samplesIn(OpenedAgain.LONGEST_SWING_SECONDS) / width;
    for (int k = Math.max(0, index - swing); k < index; k++) {
      if (signs[k] == -signs[index]) {
        return true;
      }
    }
    return false;
  }

  /** Of the mean deviation from the supply; 0 where it is none. */
  private int sign(int from) {
    double sum = 0;
    for (int i = from; i < from + width; i++) {
      sum += deviation(i);
    }
    return Math.abs(sum / width) < apartVolts() ? 0 : (int) Math.signum(sum);
  }

  /** What a mean of the supply deviates from it by. */
  private double apartVolts() {
    return Math.max(
        APART_SHARE_OF_PEAK * recording.peakVolts(), APART_NOISES * noiseVolts / Math.sqrt(width));
  }

  private @Nullable OpenedAgain discharge(Edge made, int from, int to) {
    if (to - from < Math.max(FEWEST_SAMPLES, recording.samplesIn(SHORTEST_SECONDS))
        || to - from > recording.samplesIn(OpenedAgain.LONGEST_SECONDS)) {
      return null;
    }
    boolean isLong = to - from >= FEWEST_MEANS * width;
    int first = isLong ? from + width : from; // the contact opens in the first mean
    int end = isLong ? to - 2 * width : to - width / 2; // and makes in one of the last
    double fed = 0;
    double arrived = 0;
    for (int i = first; i < end; i++) {
      double fromSupply = deviation(i);
      fed += fromSupply * fromSupply;
      double fromArrival = fromArrival(made, i);
      arrived += fromArrival * fromArrival;
    }
    double supplyVolts = Math.sqrt(Math.min(fed, arrived) / (end - first));
    Residue best = fitted(first, end);
    double most =
        Math.hypot(EXPLAINED_NOISES * noiseVolts, EXPLAINED_SHARE_OF_PEAK * recording.peakVolts());
    boolean isExplained =
        best.spreadVolts() <= most
            && supplyVolts >= WORSE * Math.max(best.spreadVolts(), noiseVolts);
    return isExplained && isFromSupply(best, from, first)
        ? new OpenedAgain(from, to, to - (isLong ? 2 : 1) * width, best)
        : null;
  }

  /**
   * Whether the load discharges from a voltage that it was fed with shortly before: the discharge
   * meets the supply there.
   */
  private boolean isFromSupply(Residue best, int from, int first) {
    double most = 0;
    double earlier = Double.NaN;
    boolean meets = false;
    for (int i = Math.max(0, first - recording.samplesIn(OPENED_SECONDS)); i <= first; i++) {
      double seconds = recording.time().secondsAt(i);
      double supplied = after.model().voltsAt(seconds);
      most = Math.max(most, (supplied - best.offsetVolts()) * Math.signum(best.cosineVolts()));
      if (i >= from - OPENED_MEANS * width) {
        double apart = best.voltsAt(seconds) - supplied;
        meets |= Math.abs(apart) <= apartVolts() || apart * earlier < 0;
        earlier = apart;
      }
    }
    return Math.abs(best.cosineVolts()) <= MOST_OF_SUPPLY * most && meets;
  }

  /** The discharge to the residue that explains the samples best. */
  private Residue fitted(int from, int to) {
    Residue coarse =
        fitted(
            from,
            to,
            OpenedAgain.SHORTEST_DECAY_SECONDS,
            OpenedAgain.LONGEST_DECAY_SECONDS,
            DECAY_RATIO);
    double decay = coarse.decaySeconds();
    return fitted(from, to, decay / DECAY_RATIO, decay * DECAY_RATIO, FINE_DECAY_RATIO);
  }

  private Residue fitted(int from, int to, double shortest, double longest, double ratio) {
    double reference = recording.time().secondsAt(from);
    double offset = residue.voltsAt(recording.time().secondsAt(0.5 * (from + to)));
    Residue best = Residue.level(offset, Double.POSITIVE_INFINITY, to);
    for (double decay = shortest; decay < longest; decay *= ratio) {
      double products = 0;
      double squares = 0;
      double volts = 0;
      for (int i = from; i < to; i++) {
        double shape = Math.exp((reference - recording.time().secondsAt(i)) / decay);
        double above = recording.volts()[i] - offset;
        products += shape * above;
        squares += shape * shape;
        volts += above * above;
      }
      double left = Math.max(0, volts - products * products / squares);
      double spread = Math.sqrt(left / Math.max(1, to - from - 2));
      if (spread < best.spreadVolts()) {
        best = new Residue(reference, offset, decay, 0, products / squares, 0, spread, to);
      }
    }
    return best;
  }

  private double deviation(int index) {
    return recording.volts()[index] - after.model().voltsAt(recording.time().secondsAt(index));
  }

  /** From the shape of the arrival, as far as it was fitted. */
  private double fromArrival(Edge made, int index) {
    double seconds = recording.time().secondsAt(index);
    return made.covers(seconds)
        ? recording.volts()[index] - made.laterVoltsAt(seconds)
        : deviation(index);
  }
}

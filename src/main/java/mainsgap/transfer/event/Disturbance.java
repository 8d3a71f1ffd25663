package mainsgap.transfer.event;

import java.util.ArrayList;
import java.util.List;
import mainsgap.transfer.supply.DeadLoad;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Tells a disturbance of a healthy supply from the loss of it: a pulse or a burst is over within
 * about a millisecond, leaves no dead load, and is followed by the same supply, its phase and
 * frequency gone on, for longer than two supplies take to cross. For one thread.
 */
public final class Disturbance {
  /** What lasts longer is left to the measurement of a gap. */
  private static final double LONGEST_SECONDS = 1.2e-3;

  /** A ring that is higher than its band for longer is no disturbance in passing. */
  private static final double LONGEST_RING_SECONDS = 12e-3;

  /** A dead load, or a supply at 10 degrees or more to this one, crosses its band faster. */
  private static final double FOLLOWED_SECONDS = 1e-3;

  /** A contact has bounced for good by then: what was dead and this short was a notch. */
  private static final double BEYOND_BOUNCE_SECONDS = 5e-3;

  /** A dead load for less is told from a notch by nothing but what follows it. */
  private static final double NOTCH_SECONDS = 0.65e-3;

  /** A fit that goes on for some cycles stays within this share of nominal peak. */
  private static final double BAND_SHARE_OF_PEAK = 0.02;

  /** Averages of noise stay within so many of their standard deviations. */
  private static final double BAND_NOISES = 4;

  /** A burst is told by its root mean square, which noise alone hardly brings to so much. */
  private static final double ROUGH_SHARE_OF_PEAK = 0.03;

  private static final double ROUGH_NOISES = 4;

  /** The beginning of a loss is looked for no further back from where it is seen. */
  private static final double SLIGHT_REACH_SECONDS = 20e-3;

  /** An arc takes away 3 % of the peak and more, a fit that reaches into it a part of that. */
  private static final double ARC_SHARE_OF_PEAK = 0.007;

  /** Deviations are worked out for so many samples at once. */
  private static final int HELD = 1024;

  /** Cycles differ by three times what they usually spread, where their own steps lie. */
  private static final double STEP_SPREADS = 3;

  private final Recording recording;
  private final Supply supply;
  private final int width;
  private final double bandVolts;
  private final double roughVolts;
  private int heldFrom;
  private double[] held = new double[0];

  /**
   * Samples that a disturbance covers.
   *
   * @param from the first of them
   * @param to one after the last
   */
  public record Stretch(int from, int to) {}

  Disturbance(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
    this.width = Departure.averagingSamples(recording);
    double rough = ROUGH_NOISES * supply.usualSpreadVolts();
    this.roughVolts = Math.max(ROUGH_SHARE_OF_PEAK * recording.peakVolts(), rough);
    this.bandVolts = bandVolts(recording, supply, width);
  }

  /** How far the means of {@code averaged} samples may lie from a supply that they follow. */
  static double bandVolts(Recording recording, Supply supply, int averaged) {
    double noise = BAND_NOISES * supply.usualSpreadVolts() / Math.sqrt(averaged);
    return Math.max(BAND_SHARE_OF_PEAK * recording.peakVolts(), noise);
  }

  /** Whether the supply goes on from a departure to the end of the record as if there were none. */
  boolean isNone(int departure) {
    int followed = recording.length() - departure - width;
    return followed >= recording.samplesIn(FOLLOWED_SECONDS) && isFollowed(departure, followed);
  }

  /** The stretch of the disturbance that begins at a departure; null where it is none. */
  @Nullable Stretch at(int departure) {
    Stretch found = until(departure, recording.samplesIn(LONGEST_SECONDS), FOLLOWED_SECONDS);
    if (found == null) {
      int longest = recording.samplesIn(LONGEST_RING_SECONDS);
      Stretch ring = until(departure, longest, BEYOND_BOUNCE_SECONDS);
      return ring != null && shape(ring).swings() && !isDead(ring) ? ring : null;
    }
    if (!isDead(found)) {
      return shape(found).endsWithStep() ? null : found;
    }
    boolean isNotch =
        found.to() - found.from() < recording.samplesIn(NOTCH_SECONDS)
            && isFollowed(found.to(), recording.samplesIn(BEYOND_BOUNCE_SECONDS));
    return isNotch ? found : null;
  }

  /**
   * The disturbances before a departure that are too short or too quick to be departures, but may
   * be taken for the beginning of what is found there.
   */
  List<Stretch> slightBefore(int departure) {
    List<Stretch> found = new ArrayList<>();
    int i = Math.max(width, departure - recording.samplesIn(SLIGHT_REACH_SECONDS));
    int end = departure - recording.samplesIn(FOLLOWED_SECONDS);
    while (i < end) {
      Stretch stretch = isAway(i) ? at(i) : null;
      if (stretch != null
          && stretch.to() <= departure - width
          && !isLowered(stretch.to(), departure - width)) {
        found.add(stretch);
      }
      i = stretch == null ? i + width : stretch.to();
    }
    return found;
  }

  /**
   * The stretch of what was measured from a departure on and is no event, of {@code longest}
   * samples at most; null where the supply does not go on after it.
   */
  @Nullable Stretch ofNoEvent(int departure, int longest) {
    return until(departure, longest, BEYOND_BOUNCE_SECONDS);
  }

  /**
   * From where the voltage leaves the supply to where it follows it again for a while; null too
   * where it is not away at the departure: the fit then reaches over two supplies.
   */
  private @Nullable Stretch until(int departure, int longest, double followedSeconds) {
    if (departure + width > recording.length() || !isAway(departure)) {
      return null;
    }
    int from = departure;
    int earliest = Math.max(0, departure - recording.samplesIn(FOLLOWED_SECONDS));
    while (from - width >= earliest && isAway(from - width)) {
      from -= width;
    }
    int followed = recording.samplesIn(followedSeconds);
    int to = departure + width;
    while (to - from <= longest + width) {
      if (isFollowed(to, followed)) {
        return new Stretch(Math.max(0, from - width), to);
      }
      to += Math.max(1, width / 2);
    }
    return null;
  }

  private DisturbanceShape shape(Stretch stretch) {
    return new DisturbanceShape(recording, supply, stretch);
  }

  private boolean isDead(Stretch stretch) {
    return new DeadLoad(recording, supply).isIn(stretch.from(), stretch.to());
  }

  /** An arc takes some volts away up to the loss: what precedes it may be its beginning. */
  private boolean isLowered(int from, int to) {
    double[] supplied = supply.voltsIn(recording.time(), from, to);
    double sum = 0;
    for (int k = 0; k < supplied.length; k++) {
      sum += (supplied[k] - recording.volts()[from + k]) * Math.signum(supplied[k]);
    }
    return sum > ARC_SHARE_OF_PEAK * recording.peakVolts() * supplied.length;
  }

  private boolean isFollowed(int from, int samples) {
    int to = from + samples;
    if (to + width > recording.length()) {
      return false;
    }
    for (int i = from; i < to; i += width) {
      if (isAway(i)) {
        return false;
      }
    }
    return true;
  }

  private boolean isAway(int from) {
    double sum = 0;
    double squares = 0;
    double spread = 0;
    for (int i = from; i < from + width; i++) {
      double deviation = deviationVolts(i);
      sum += deviation;
      squares += deviation * deviation;
      spread = supply.isVagueInPlaces() ? Math.max(spread, spreadVolts(i)) : 0;
    }
    boolean isRough = !supply.isVagueInPlaces() && Math.sqrt(squares / width) > roughVolts;
    return isRough || Math.abs(sum / width) > Math.max(bandVolts, STEP_SPREADS * spread);
  }

  private double deviationVolts(int index) {
    if (index < heldFrom || index >= heldFrom + held.length) {
      heldFrom = index - index % HELD;
      held =
          supply.deviationsIn(recording, heldFrom, Math.min(heldFrom + HELD, recording.length()));
    }
    return held[index - heldFrom];
  }

  private double spreadVolts(int index) {
    return supply.model().spreadVoltsAt(recording.time().secondsAt(index));
  }
}

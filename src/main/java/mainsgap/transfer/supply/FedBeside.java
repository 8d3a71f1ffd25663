package mainsgap.transfer.supply;

import org.jspecify.annotations.Nullable;

/**
 * What feeds a load right before it lies still, or right behind: the supply that is about more than
 * a cycle away, or that supply with its voltage or its angle stepped in between. No residue ends in
 * a dead load with so much of a cycle of nominal height before it.
 *
 * @param supply moved to the samples that it feeds
 * @param settled as it is more than a cycle away
 * @param isMoved whether that is another than the settled one
 * @param from the first of the samples
 * @param to one after the last
 */
public record FedBeside(Supply supply, Supply settled, boolean isMoved, int from, int to) {
  /** What comes sooner beside the gap has no say in what the settled supply is. */
  public static final double APART_CYCLES = 2.3;

  /** Where the record is short: less than a cycle and more cannot be told from it. */
  private static final double LEAST_APART_CYCLES = 1.3;

  private static final double MOST_CYCLES = 10;
  private static final double FEWEST_CYCLES = 1.5;

  /** Of a shorter stretch a level that is held, or decays, may be the crest of a sine. */
  private static final double SHORTEST_CYCLES = 0.15;

  /** The supply itself is told from these by fewer samples. */
  private static final double SHORTEST_UNMOVED_CYCLES = 0.1;

  private static final double UNMOVED_RATIO = 0.03;
  private static final double UNMOVED_CYCLES = 0.01;

  /** An arc takes so much away of the supply (own choice). */
  private static final double ARC_LEAST_SHARE_OF_PEAK = 0.015;

  private static final double ARC_MOST_SHARE_OF_PEAK = 0.2;

  /** In noise a lower supply explains an arc nearly as well. */
  private static final double ARC_MISFIT = 1.3;

  /** A motor that is left swings lower; for longer its slip would show. */
  public static final double MOTOR_RATIO = 0.97;

  private static final double MOTOR_CYCLES = 0.25;
  private static final double MOTOR_SPREADS = 1.25;
  private static final double OVERRUN_SHARE = 0.4;

  /** Noise goes beyond so many of its spreads in one sample of a hundred. */
  private static final double LEFT_SPREADS = 2;

  /** A tenth of a cycle is no spike (own choice). */
  private static final double LEFT_SHARE = 0.1;

  /** Where the load is dead beside it for so long, a contact bounces. */
  private static final double OPENED_SECONDS = 0.35e-3;

  private static final double DEAD_SHARE_OF_PEAK = 0.05;

  /** The last growth that was explained may already reach a little over what it feeds. */
  private static final double GROWTH_CYCLES = 0.05;

  /** About a crossing it feeds a load that already seems to lie still. */
  private static final double GUARD_SECONDS = 0.2e-3;

  /** Lower is a sag or a motor that runs on; higher is a surge. */
  private static final double LEAST_RATIO = 0.7;

  private static final double MOST_RATIO = 1.3;
  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;
  private static final double EXPLAINED_NOISES = 1.3;
  private static final double AT_ONCE_SHARE_OF_PEAK = 0.005;
  private static final double AT_ONCE_NOISES = 1.15;

  /**
   * Looks back from a sample.
   *
   * @param still the first sample of a load that lies still
   * @return null where nothing feeds the load up to there, or only for less than a cycle after it
   *     was dead, or where the record begins too late
   */
  public static @Nullable FedBeside upTo(Recording recording, int still) {
    double cycle = recording.samplesPerCycle();
    int to = (int) (still - apartCycles(still / cycle) * cycle);
    int from = (int) Math.max(0, to - MOST_CYCLES * cycle);
    return beside(recording, from, to, still - guard(recording), -1);
  }

  /**
   * Looks on from a sample.
   *
   * @param still one after the last sample of a load that lies still
   * @return null where nothing feeds the load from there on, or only for less than a cycle before
   *     it is dead again, or where the record ends too soon
   */
  public static @Nullable FedBeside from(Recording recording, int still) {
    double cycle = recording.samplesPerCycle();
    double apart = apartCycles((recording.length() - still) / cycle);
    int from = (int) (still + apart * cycle);
    int to = (int) Math.min(recording.length(), from + MOST_CYCLES * cycle);
    return beside(recording, from, to, still + guard(recording), 1);
  }

  /**
   * The supply that feeds from one sample to another, more than a cycle later, that each lie beside
   * a load that lies still; null where none does.
   */
  public static @Nullable Supply between(
      Recording recording, Supply before, int stillTo, int stillFrom) {
    int from = stillTo + guard(recording);
    int to = stillFrom - guard(recording);
    double hertz = recording.task().nominalFrequencyHertz();
    Supply fed = Supply.fit(recording, from, to, hertz);
    double height = fed.harmonics().amplitudeVolts() / recording.peakVolts();
    return height > LEAST_RATIO
            && height < MOST_RATIO
            && !fed.hasSteps()
            && fed.spreadIn(recording, from, to) < explainedVolts(recording, before)
        ? fed
        : null;
  }

  private static double apartCycles(double recorded) {
    double left = Math.min(APART_CYCLES, recorded - FEWEST_CYCLES);
    return Math.max(LEAST_APART_CYCLES, left);
  }

  private static double explainedVolts(Recording recording, Supply settled) {
    return Math.max(
        EXPLAINED_SHARE_OF_PEAK * recording.peakVolts(),
        EXPLAINED_NOISES * settled.usualSpreadVolts());
  }

  /** A supply that still comes up is no other than the one that it comes up to. */
  private static double atOnceVolts(Recording recording, Supply settled) {
    return Math.max(
        AT_ONCE_SHARE_OF_PEAK * recording.peakVolts(), AT_ONCE_NOISES * settled.usualSpreadVolts());
  }

  private static int guard(Recording recording) {
    return Departure.averagingSamples(recording) + recording.samplesIn(GUARD_SECONDS);
  }

  /** From {@code edge} on towards the settled supply, on its negative or its positive side. */
  private static @Nullable FedBeside beside(
      Recording recording, int settledFrom, int settledTo, int edge, int side) {
    double cycle = recording.samplesPerCycle();
    if (settledTo - settledFrom < (int) (FEWEST_CYCLES * cycle)) {
      return null;
    }
    double hertz = recording.task().nominalFrequencyHertz();
    Supply settled = Supply.fit(recording, settledFrom, settledTo, hertz);
    if (settled.hasSteps()) {
      return null;
    }
    double most = side < 0 ? explainedVolts(recording, settled) : atOnceVolts(recording, settled);
    MovedSupply moved = new MovedSupply(recording, settled);
    FedBeside longest = null;
    FedBeside shorter = null;
    for (double cycles = SHORTEST_UNMOVED_CYCLES; cycles < APART_CYCLES; cycles += GROWTH_CYCLES) {
      int length = (int) Math.ceil(cycles * cycle);
      int from = side < 0 ? edge - length : edge;
      MovedSupply.Move move = moved.to(from, from + length, 1);
      if (move.misfitVolts() > most || move.ratio() < LEAST_RATIO || move.ratio() > MOST_RATIO) {
        longest = shorter == null ? longest : shorter;
        break;
      }
      double turned = Math.abs(move.seconds()) / recording.task().cycleSeconds();
      boolean isUnmoved = Math.abs(move.ratio() - 1) < UNMOVED_RATIO && turned < UNMOVED_CYCLES;
      if (isUnmoved || cycles >= SHORTEST_CYCLES) {
        Supply feeding = moved.by(move, from, from + length);
        shorter = longest;
        longest = new FedBeside(feeding, settled, !isUnmoved, from, from + length);
      }
    }
    boolean isNone =
        longest == null
            || longest.isDeadBeside(recording, side)
            || (side < 0 && longest.mayBeMotor(recording));
    return isNone ? null : longest;
  }

  /**
   * Whether all that is seen from a sample on are some missing volts of the settled supply, as it
   * is up to there, the same at any height of it, as of an arc; none where more of the cycle before
   * is not that supply than a spike.
   */
  public boolean isLoweredFrom(Recording recording, int sample) {
    int first = Math.max(sample, from);
    int start = sample - (int) recording.samplesPerCycle();
    Supply near = movedTo(recording, start, sample);
    if (isLeftIn(recording, near, Math.max(0, start), sample)) {
      return false;
    }
    double[] supplied = near.voltsIn(recording.time(), first, to);
    double[] more = near.deviationsIn(recording, first, to);
    double missing = 0;
    for (int k = 0; k < more.length; k++) {
      missing -= more[k] * Math.signum(supplied[k]) / more.length;
    }
    double squares = 0;
    for (int k = 0; k < more.length; k++) {
      double off = more[k] + missing * Math.signum(supplied[k]);
      squares += off * off;
    }
    double peak = recording.peakVolts();
    double explained = Math.max(supply.spreadIn(recording, first, to), settled.usualSpreadVolts());
    return missing > ARC_LEAST_SHARE_OF_PEAK * peak
        && missing < ARC_MOST_SHARE_OF_PEAK * peak
        && Math.sqrt(squares / more.length) < ARC_MISFIT * explained;
  }

  /** Whether more samples than a spike has lie away from a supply. */
  private boolean isLeftIn(Recording recording, Supply near, int first, int end) {
    double most = LEFT_SPREADS * explainedVolts(recording, settled);
    int left = 0;
    for (double deviation : near.deviationsIn(recording, first, end)) {
      left += Math.abs(deviation) > most ? 1 : 0;
    }
    return left > LEFT_SHARE * (end - first);
  }

  /** The settled supply, moved to the samples of a cycle: from far away its angle is known less. */
  private Supply movedTo(Recording recording, int start, int end) {
    int last = end - guard(recording);
    if (start < 0 || last <= start) {
      return settled;
    }
    MovedSupply moved = new MovedSupply(recording, settled);
    return moved.by(moved.to(start, last, 1), start, last);
  }

  /**
   * Whether a load that was left could swing so for as long: lower, for a moment only, and not as
   * closely to the supply as its own samples lie. The first of them may be those before a step.
   */
  private boolean mayBeMotor(Recording recording) {
    double ratio = supply.harmonics().amplitudeVolts() / settled.harmonics().amplitudeVolts();
    int told = from + (int) (OVERRUN_SHARE * (to - from));
    return ratio < MOTOR_RATIO
        && to - from < MOTOR_CYCLES * recording.samplesPerCycle()
        && supply.spreadIn(recording, told, to) > MOTOR_SPREADS * settled.usualSpreadVolts();
  }

  /**
   * Whether this supply or an earlier one feeds the load all along, but for less than a contact
   * that bounces is open.
   *
   * @param first the first sample that is looked at
   * @param end one after the last
   */
  public boolean feedsWith(Supply earlier, Recording recording, int first, int end) {
    int begin = Math.max(0, first);
    int to = Math.min(recording.length(), end);
    double within = DEAD_SHARE_OF_PEAK * recording.peakVolts();
    double[] before = earlier.deviationsIn(recording, begin, to);
    double[] then = supply.deviationsIn(recording, begin, to);
    int longest =
        LongestRun.of(
            0, to - begin, k -> Math.abs(before[k]) > within && Math.abs(then[k]) > within);
    return longest < recording.samplesIn(OPENED_SECONDS);
  }

  /** In the cycle on that side of the samples. */
  private boolean isDeadBeside(Recording recording, int side) {
    int cycle = (int) recording.samplesPerCycle();
    int first = side < 0 ? Math.max(0, from - cycle) : to;
    int end = side < 0 ? from : Math.min(recording.length(), to + cycle);
    double within = DEAD_SHARE_OF_PEAK * recording.peakVolts();
    double offset = supply.harmonics().offsetVolts();
    double[] apart = settled.deviationsIn(recording, first, end);
    double[] away = supply.deviationsIn(recording, first, end);
    int longest =
        LongestRun.of(
            first,
            end,
            i ->
                Math.abs(recording.volts()[i] - offset) < within
                    && Math.abs(apart[i - first]) > within
                    && Math.abs(away[i - first]) > within);
    return longest >= recording.samplesIn(OPENED_SECONDS);
  }
}

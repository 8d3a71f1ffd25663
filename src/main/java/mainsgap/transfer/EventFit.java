package mainsgap.transfer;

import mainsgap.signal.HarmonicModel;
import mainsgap.transfer.event.CameBack;
import mainsgap.transfer.event.Disturbance;
import mainsgap.transfer.event.FollowedAgain;
import mainsgap.transfer.event.MainsWatch;
import mainsgap.transfer.event.PassedOver;
import mainsgap.transfer.event.UnbrokenSupply;
import mainsgap.transfer.gap.GapMeasurement;
import mainsgap.transfer.instant.GapEnds;
import mainsgap.transfer.instant.GapTopology;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SampleNoise;
import mainsgap.transfer.supply.SettledSupply;
import mainsgap.transfer.supply.SteppedMains;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Fits the supplies on both sides of a departure, and measures what lies between them. */
final class EventFit {
  /** The supply before is fitted over so many cycles at most. */
  private static final double CYCLES_BEFORE = 10;

  static final double FEWEST_CYCLES_FITTED = 1.5;

  /** What lies this close before the departure is left out of the fit of the supply before. */
  private static final double GUARD_SECONDS = 1.5e-3;

  /** The same before a loss that has been located. */
  private static final double REFIT_GUARD_SECONDS = 0.3e-3;

  /** What is left on the load tells nothing of it so long before it. */
  private static final double LATER_SECONDS = 1e-3;

  /** An output that is disturbed more often at its loss is left to the search. */
  private static final int MOST_BRIDGED = 40;

  /** A supply that settles later may be another one than that which came at the departure. */
  private static final double SETTLED_CYCLES = 2;

  /** A residue that spans two openings takes what lies between them for its own. */
  private static final double CLEARER_SHARE = 0.9;

  private final HarmonicModel start;
  private final double noiseVolts;
  private final MainsWatch watch;
  private final double period;

  /**
   * For one recording.
   *
   * @param start its first cycles
   * @param noiseVolts the standard deviation of one sample's noise
   * @param period in samples
   */
  EventFit(HarmonicModel start, double noiseVolts, MainsWatch watch, double period) {
    this.start = start;
    this.noiseVolts = noiseVolts;
    this.watch = watch;
    this.period = period;
  }

  /** The first sample from {@code from} on that leaves the supply; -1 where none does. */
  int departure(Recording watched, int from) {
    double threshold = Departure.thresholdVolts(watched, noiseVolts(watched));
    return Departure.find(watched, from, watched.length(), period, threshold);
  }

  private double noiseVolts(Recording watched) {
    return SampleNoise.atMost(watched, noiseVolts);
  }

  /**
   * Judges what follows such a supply where it shows no gap.
   *
   * @param passedOver the last disturbance that was no event; null where there was none
   */
  UnbrokenSupply unbroken(
      Recording watched, HarmonicModel supply, Disturbance.@Nullable Stretch passedOver) {
    return new UnbrokenSupply(watched, supply, noiseVolts(watched), watch, passedOver);
  }

  /**
   * Fits up to shortly before the departure, over ten cycles at most.
   *
   * @param fitFrom the supply is not looked at before it, unless too little is left of it
   */
  Supply supplyBefore(Recording watched, int fitFrom, int departure) {
    int to = departure - watched.samplesIn(GUARD_SECONDS);
    double earliest = Math.min(fitFrom, to - FEWEST_CYCLES_FITTED * period);
    int from = (int) Math.max(Math.max(0, earliest), to - CYCLES_BEFORE * period);
    if (watched.isClippedIn(from, to)) {
      throw new CannotMeasureException(
          "the supply before is clipped: choose a larger range, at least 1.5 times the nominal"
              + " peak of "
              + Math.round(watched.peakVolts())
              + " V");
    }
    return Supply.fitUpTo(watched, from, to, start.frequencyHertz(), departure);
  }

  /** What is found about a departure; null where it turns out to be no event. */
  @Nullable FoundEvent event(
      Recording watched, Supply before, int departure, Disturbance.@Nullable Stretch disturbed) {
    FoundEvent event = fitted(watched, before, departure, disturbed);
    if (event != null && event.outcome() instanceof NoInterruption none) {
      HiddenGap hidden = HiddenGap.before(watched, before, none);
      FoundEvent gap = hidden == null ? null : hidden(watched, hidden, departure, disturbed);
      return gap == null ? event : gap;
    }
    Supply upToLoss = event == null ? null : upToLoss(watched, before, event.outcome());
    FoundEvent again = upToLoss == null ? null : fitted(watched, upToLoss, departure, disturbed);
    return again == null ? event : again;
  }

  private @Nullable FoundEvent hidden(
      Recording watched, HiddenGap hidden, int departure, Disturbance.@Nullable Stretch disturbed) {
    int left = Math.min(departure, hidden.step());
    FoundEvent found = Tried.orNull(() -> fitted(watched, hidden.supply(), left, disturbed));
    return found != null && hidden.isShownBy(found) ? found : null;
  }

  private @Nullable FoundEvent fitted(
      Recording watched, Supply before, int departure, Disturbance.@Nullable Stretch disturbed) {
    Supply settled = settled(watched, departure);
    Supply back = CameBack.between(watched, before, departure, settled);
    FoundEvent between =
        back == null ? null : between(watched, before, back, departure, disturbed, 0);
    if (between != null && between.outcome() instanceof Measured) {
      return between;
    }
    FoundEvent event = between(watched, before, settled, departure, disturbed, 0);
    Supply stepped =
        event == null ? null : stepped(watched, before, settled, departure, event.outcome());
    return stepped == null ? event : between(watched, before, stepped, departure, disturbed, 0);
  }

  /**
   * The supply that feeds where a gap was found for want of a settled one; null where none does.
   */
  private @Nullable Supply stepped(
      Recording watched, Supply before, @Nullable Supply settled, int departure, Outcome outcome) {
    boolean isLate = settled == null || settled.from() - departure > SETTLED_CYCLES * period;
    if (!isLate || !(outcome instanceof Measured measured)) {
      return null;
    }
    double lost = watched.time().indexAt(measured.lossSeconds());
    return lost < departure + period ? SteppedMains.from(watched, before, departure) : null;
  }

  /**
   * What lies between two supplies. What is left on the load behind its last opening tells whether
   * it was dead before: what was a disturbance is bridged, {@code bridged} of them so far.
   */
  private @Nullable FoundEvent between(
      Recording watched,
      Supply before,
      @Nullable Supply after,
      int departure,
      Disturbance.@Nullable Stretch disturbed,
      int bridged) {
    GapTopology seen = new GapTopology(watched, before, after, departure);
    int left = seen.followedAgain().left();
    boolean isLater = left - departure > watched.samplesIn(LATER_SECONDS);
    GapTopology topology = isLater ? seen.leftAt(left) : seen;
    FollowedAgain again = topology.followedAgain();
    boolean isLeftAgain = again.leftForGood() > again.left();
    GapTopology opened = isLeftAgain ? topology.leftAt(again.leftForGood()) : topology;
    Disturbance.Stretch disturbance = isLeftAgain ? opened.followedAgain().disturbance() : null;
    if (disturbance != null) {
      PassedOver passed = PassedOver.bridged(watched, before, disturbance);
      Recording cleared = passed.recording();
      int next = departure(cleared, passed.from());
      if (next < 0 || bridged >= MOST_BRIDGED) {
        return null;
      }
      Supply following = after == null || next > after.from() ? settled(cleared, next) : after;
      return between(cleared, before, following, next, disturbance, bridged + 1);
    }
    boolean isBetter =
        opened.residue().spreadVolts() < CLEARER_SHARE * topology.residue().spreadVolts();
    GapTopology shown = isBetter ? opened : topology;
    GapTopology kept = shown.withKeptVoltage();
    GapTopology told = kept == null ? shown : kept;
    GapEnds ends = new GapEnds(watched, before, after, told);
    UnbrokenSupply unbroken = unbroken(watched, before.harmonics(), disturbed);
    Outcome outcome = new GapMeasurement(watched, before, after, told, ends, unbroken).outcome();
    return outcome == null ? null : new FoundEvent(outcome, before, after, null);
  }

  /**
   * What is found where the load is fed by one supply at first, and settles on another.
   *
   * @param cleared the same recording as if the first had gone on feeding
   */
  @Nullable FoundEvent returned(
      Recording watched, Recording cleared, Supply before, Supply first, Supply settled, int left) {
    GapTopology topology = new GapTopology(cleared, before, first, left);
    GapEnds ends = new GapEnds(cleared, before, first, topology);
    UnbrokenSupply unbroken = unbroken(watched, before.harmonics(), null);
    Outcome outcome =
        new GapMeasurement(watched, before, settled, topology, ends, unbroken).outcome();
    return outcome == null ? null : new FoundEvent(outcome, before, settled, null);
  }

  private static @Nullable Supply settled(Recording watched, int departure) {
    return SettledSupply.after(watched, departure, watched.task().nominalFrequencyHertz());
  }

  /**
   * The supply before, fitted anew up to a loss that lies in its fit, as behind an arc: the fit
   * takes what comes after the loss for noise and for a part of the supply. Null where it lies
   * later, or where too little is left to fit.
   */
  private static @Nullable Supply upToLoss(Recording watched, Supply before, Outcome outcome) {
    if (!(outcome instanceof Measured measured)) {
      return null;
    }
    int loss = (int) watched.time().indexAt(measured.lossSeconds());
    int to = loss - watched.samplesIn(REFIT_GUARD_SECONDS);
    return to >= before.to()
            || to - before.from() < FEWEST_CYCLES_FITTED * watched.samplesPerCycle()
        ? null
        : Supply.fit(watched, before.from(), to, before.model().frequencyHertz());
  }
}

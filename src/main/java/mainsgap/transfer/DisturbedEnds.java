package mainsgap.transfer;

import mainsgap.transfer.event.Disturbance;
import mainsgap.transfer.event.PassedOver;
import mainsgap.transfer.gap.StillLoad;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.supply.FedBeside;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Finds the ends of a gap beside which a supply is disturbed, by a spike or a step of its voltage
 * or its angle: too close to the gap to settle, so that the search takes the one for the other. The
 * load lies still in the gap, and a supply of about nominal height feeds it up to there, and from
 * there on.
 */
final class DisturbedEnds {
  /** A load that nothing feeds lies still sooner, or is held by what it stores. */
  private static final double LATE_CYCLES = 0.05;

  /** About a crossing it seems to lie still so long before. */
  private static final double EARLY_CYCLES = 0.1;

  /** What a supply leaves of samples in which another one feeds (own choice). */
  private static final double OTHER_SHARE_OF_PEAK = 0.007;

  private static final double OTHER_SPREADS = 1.3;

  /** A break that begins so soon after a return belongs to the same gap. */
  private static final double BOUNCE_CYCLES = 1;

  /** About its crossings a supply lies as still as a load that it does not feed. */
  private static final double SLACK_CYCLES = 0.06;

  /** The rest of a gap are bounces, and what the load discharges in. */
  private static final double STILL_SHARE = 0.5;

  /** A shorter stretch may be a crossing. */
  private static final double LONG_CYCLES = 0.07;

  /** A supply that feeds for less between two breaks is a contact that bounces. */
  private static final double FED_CYCLES = 1.1;

  /** What is disturbed lies so close before the gap. */
  private static final double BRIDGED_CYCLES = 3;

  /**
   * The supply that mains steps to is told from so long behind the step on, for it is told in
   * steps.
   */
  private static final double STEP_CYCLES = 0.12;

  /** What a supply feeds is told a little beyond the step that it comes from, or goes to. */
  private static final double OVERRUN_CYCLES = 0.1;

  /** An arc burns for half a cycle at most, up to where the voltage crosses zero. */
  private static final double ARC_CYCLES = 0.55;

  private static final double ARC_SHARE_OF_PEAK = 0.2;

  private final Recording output;
  private final double startNoiseVolts;
  private final EventSearch search;
  private final StillLoad still;
  private final double cycle;

  /**
   * A gap that was found.
   *
   * @param lost the place of its loss, in samples
   * @param back that of its return
   */
  private record Told(Supply before, Supply after, double lost, double back) {
    double usualSpreadVolts() {
      return Math.min(before.usualSpreadVolts(), after.usualSpreadVolts());
    }
  }

  /**
   * Of one record.
   *
   * @param startNoiseVolts the standard deviation of one sample's noise in its first cycles
   */
  DisturbedEnds(Recording output, double startNoiseVolts, EventSearch search, StillLoad still) {
    this.output = output;
    this.startNoiseVolts = startNoiseVolts;
    this.search = search;
    this.still = still;
    this.cycle = output.samplesPerCycle();
  }

  /** What was found, or the gap where the load lies still, if that does not end with it. */
  FoundEvent insteadOf(FoundEvent found) {
    FoundEvent gap = found.outcome() instanceof NoInterruption ? first() : null;
    Told told = told(found);
    if (told != null) {
      gap = lostLater(told);
      gap = gap == null ? backBetween(told) : gap;
      gap = gap == null ? backSooner(told, output) : gap;
    }
    return gap == null ? found : gap;
  }

  /** The first gap in which the load lies still; null where there is none. */
  @Nullable FoundEvent first() {
    for (StillLoad.Stretch stretch : still.beyondRests()) {
      FoundEvent gap = about(stretch, Double.NaN);
      if (gap != null) {
        return gap;
      }
    }
    return null;
  }

  private @Nullable Told told(FoundEvent event) {
    Supply before = event.before();
    Supply after = event.after();
    return event.outcome() instanceof Measured gap && before != null && after != null
        ? new Told(
            before,
            after,
            output.time().indexAt(gap.lossSeconds()),
            output.time().indexAt(gap.returnSeconds()))
        : null;
  }

  /** Where another supply feeds up to the still load than that which was left, or up to later. */
  private @Nullable FoundEvent lostLater(Told told) {
    for (StillLoad.Stretch stretch : still.beyondRests()) {
      boolean isIn = stretch.to() > told.lost && stretch.from() < told.back + BOUNCE_CYCLES * cycle;
      if (isIn) {
        double later = (stretch.from() - told.lost) / cycle;
        boolean isElsewhere = later > LATE_CYCLES || later < -EARLY_CYCLES;
        int first = (int) Math.max(0, told.lost - cycle);
        return isElsewhere || isOther(told, told.before, first, (int) told.lost)
            ? about(stretch, told.lost)
            : null;
      }
      FoundEvent other = isLong(stretch) ? lostElsewhere(told, stretch) : null;
      if (other != null) {
        return other;
      }
    }
    return null;
  }

  /**
   * The loss before a still load that lies before what was found, or soon behind it: then what was
   * found is a step of the supply before, from which on one supply feeds the load up to there.
   */
  private @Nullable FoundEvent lostElsewhere(Told told, StillLoad.Stretch stretch) {
    if (stretch.to() <= told.lost) {
      return about(stretch, Double.NaN);
    }
    boolean isSoon = stretch.from() < told.lost + FedBeside.APART_CYCLES * cycle;
    FedBeside fed = isSoon ? FedBeside.upTo(output, stretch.from()) : null;
    return fed != null && isStep(told, fed) ? about(stretch, told.lost) : null;
  }

  private boolean isStep(Told told, FedBeside fed) {
    return fed.from() <= told.lost + STEP_CYCLES * cycle
        && fed.feedsWith(told.before, output, (int) told.lost, (int) told.back);
  }

  /**
   * Whether a supply leaves more of samples that it should feed than the quieter of the two
   * supplies usually does, or the start of the record.
   */
  private boolean isOther(Told told, Supply supply, int from, int to) {
    if (supply.isVagueInPlaces() || to - from < cycle / 2) {
      return false;
    }
    double usual = OTHER_SPREADS * Math.min(startNoiseVolts, told.usualSpreadVolts());
    return supply.spreadIn(output, from, to)
        > Math.max(OTHER_SHARE_OF_PEAK * output.peakVolts(), usual);
  }

  /** Null where the models show no gap there, or where it may begin with an arc that was found. */
  private @Nullable FoundEvent about(StillLoad.Stretch stretch, double lost) {
    if (output.isClippedIn(0, output.length())) {
      return null;
    }
    FedBeside fed = FedBeside.upTo(output, stretch.from());
    if (fed == null || isArc(fed, lost, stretch.from())) {
      return null;
    }
    int earlier = (int) Math.max(0, fed.from() - BRIDGED_CYCLES * cycle);
    int later = (int) Math.min(middle(fed), fed.from() + OVERRUN_CYCLES * cycle);
    Recording cleared = bridged(output, fed.supply(), earlier, later);
    FoundEvent event = search.at(cleared, fed.supply(), stretch.from());
    if (event != null && isAbout(stretch, event)) {
      Told told = told(event);
      FoundEvent sooner = told == null ? null : backSooner(told, cleared);
      return sooner == null ? event : sooner;
    }
    FedBeside behind = FedBeside.from(output, stretch.to());
    return behind == null ? null : backBy(behind, cleared, fed.supply(), stretch);
  }

  /**
   * Where a supply feeds for more than a cycle from a still stretch of a gap to another: it has
   * taken over, for too short a time to settle, and failed.
   */
  private @Nullable FoundEvent backBetween(Told told) {
    StillLoad.Stretch last = null;
    for (StillLoad.Stretch stretch : still.beyondRests()) {
      if (!isLong(stretch)) {
        continue;
      }
      Supply between = last == null ? null : between(told, last.to(), stretch.from());
      if (last != null && between != null) {
        int left = (int) told.lost;
        FoundEvent event = search.at(output, output, told.before, between, between, left);
        return event != null && isAbout(last, event) ? event : null;
      }
      last = isIn(told, stretch) ? stretch : null;
    }
    return null;
  }

  private @Nullable Supply between(Told told, int stillTo, int stillFrom) {
    boolean isMissed =
        stillFrom - stillTo > FED_CYCLES * cycle && told.back - stillTo > LATE_CYCLES * cycle;
    return isMissed ? FedBeside.between(output, told.before, stillTo, stillFrom) : null;
  }

  /**
   * Where another supply feeds right behind the still load than that which comes to stay. If it is
   * the same, the contact has bounced.
   */
  private @Nullable FoundEvent backSooner(Told told, Recording watched) {
    StillLoad.Stretch last = null;
    for (StillLoad.Stretch stretch : still.beyondRests()) {
      last = isIn(told, stretch) ? stretch : last;
    }
    if (last == null) {
      return null;
    }
    double later = (told.back - last.to()) / cycle;
    boolean isElsewhere = later > LATE_CYCLES || later < -SLACK_CYCLES;
    int back = (int) Math.ceil(told.back);
    int end = (int) Math.min(output.length(), back + cycle);
    boolean isDisturbed = isElsewhere || isOther(told, told.after, back, end);
    FedBeside behind = isDisturbed ? FedBeside.from(output, last.to()) : null;
    return behind != null && behind.isMoved() ? backBy(behind, watched, told.before, last) : null;
  }

  /** The gap up to a supply that feeds right behind the still load; null where it is none. */
  private @Nullable FoundEvent backBy(
      FedBeside behind, Recording watched, Supply before, StillLoad.Stretch stretch) {
    int settling = (int) Math.min(output.length(), behind.to() + BRIDGED_CYCLES * cycle);
    int sooner = (int) Math.max(middle(behind), behind.to() - OVERRUN_CYCLES * cycle);
    Recording fed = bridged(watched, behind.supply(), sooner, settling);
    FoundEvent event =
        search.at(watched, fed, before, behind.supply(), behind.settled(), stretch.from());
    return event != null && isAbout(stretch, event) ? event : null;
  }

  private static Recording bridged(Recording watched, Supply supply, int from, int to) {
    return PassedOver.bridged(watched, supply, new Disturbance.Stretch(from, to)).recording();
  }

  /** The half beside the still load is the one in which the instant is looked for. */
  private static int middle(FedBeside fed) {
    return (fed.from() + fed.to()) / 2;
  }

  private boolean isLong(StillLoad.Stretch stretch) {
    return stretch.length() >= LONG_CYCLES * cycle;
  }

  private boolean isIn(Told told, StillLoad.Stretch stretch) {
    return stretch.from() > told.lost - EARLY_CYCLES * cycle && stretch.from() < told.back;
  }

  private boolean isArc(FedBeside fed, double lost, int stillFrom) {
    double atEnd = fed.supply().model().voltsAt(output.time().secondsAt(stillFrom));
    return stillFrom - lost < ARC_CYCLES * cycle
        && Math.abs(atEnd) < ARC_SHARE_OF_PEAK * output.peakVolts()
        && fed.isLoweredFrom(output, (int) Math.ceil(lost));
  }

  /** Whether it is a gap that ends with the still load, and that this makes most of. */
  private boolean isAbout(StillLoad.Stretch stretch, FoundEvent event) {
    if (!(event.outcome() instanceof Measured gap)) {
      return false;
    }
    double slack = SLACK_CYCLES * cycle;
    double lost = output.time().indexAt(gap.lossSeconds());
    double back = output.time().indexAt(gap.returnSeconds());
    return lost < stretch.from() + slack
        && Math.abs(back - stretch.to()) < slack
        && stretch.length() > STILL_SHARE * (back - lost);
  }
}

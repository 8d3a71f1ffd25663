package mainsgap.transfer.gap;

import java.util.List;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.event.Disturbance;
import mainsgap.transfer.event.MainsWatch;
import mainsgap.transfer.event.Sag;
import mainsgap.transfer.event.UnbrokenSupply;
import mainsgap.transfer.instant.GapEnds;
import mainsgap.transfer.instant.GapResidue;
import mainsgap.transfer.instant.GapTopology;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.supply.FedAtOnce;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import mainsgap.transfer.supply.SupplyBreaks;
import mainsgap.transfer.supply.SupplySteps;
import org.jspecify.annotations.Nullable;

/** Takes the figures of a gap between its ends, or tells that there is none. */
public final class GapMeasurement {
  /** Fewer cycles, as between two sags, tell no frequency and no phase that then changes. */
  private static final double FEWEST_CYCLES_FOLLOWED = 1.9;

  /** Shorter gaps are not told from notches. */
  private static final double SHORTEST_GAP_SECONDS = 0.4e-3;

  /** The low end of its interval lies above this, or a gap is not shown to be one. */
  private static final double SHORTEST_PROVED_SECONDS = 0.1e-3;

  private static final double APART_SHARE_OF_PEAK = 0.08;

  /** Contacts bounce, supplies start softly: not all of a gap lies at the residue. */
  private static final double LEFT_SHARE = 0.3;

  /** Any voltage crosses the supply before now and then. */
  private static final double FOLLOWING_SHARE = 0.5;

  /** A load that is dead for less, at the record's end, may be one that is fed and crosses zero. */
  private static final double SHORTEST_DEAD_SECONDS = 2e-3;

  /** A gap is beyond doubt where so many standard uncertainties leave something of it. */
  private static final double BEYOND_DOUBT = 2;

  /** Ends that are known worse than this may be those of two supplies that go over. */
  private static final double VAGUE_SECONDS = 0.2e-3;

  /** A supply that takes over is followed so soon. */
  private static final double TAKEN_OVER_CYCLES = 0.25;

  private static final double FED_SHARE_OF_PEAK = 0.03;
  private static final double FED_NOISES = 4;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final MainsWatch mains;
  private final Disturbance.@Nullable Stretch disturbed;
  private final GapEnds ends;

  public GapMeasurement(
      Recording recording,
      Supply before,
      @Nullable Supply after,
      GapTopology topology,
      MainsWatch mains,
      Disturbance.@Nullable Stretch disturbed) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = topology.runs();
    this.residue = topology.residue();
    this.mains = mains;
    this.disturbed = disturbed;
    this.ends = new GapEnds(recording, before, after, topology);
  }

  /** The outcome of the event; null where the departure turns out to be none. */
  public @Nullable Outcome outcome() {
    if (!ends.hasGap()) {
      if (before.to() - before.from() < FEWEST_CYCLES_FOLLOWED * recording.samplesPerCycle()) {
        return null;
      }
      return new UnbrokenSupply(recording, before.harmonics(), mains, disturbed)
          .changedTo(after, ends.changeSeconds());
    }
    Edge loss = ends.loss();
    Edge lastOpening = ends.lastOpening(loss);
    if (after == null || !ends.hasReturn()) {
      return noReturn(loss, lastOpening);
    }
    GapEnds.Returns returns = ends.returns(lastOpening, after);
    if (isInterruption(loss, returns.settled(), after)) {
      return measured(loss, lastOpening, returns, after);
    }
    return isTakenOver(loss, after, returns.settled())
        ? new UnbrokenSupply(recording, before.harmonics(), mains, disturbed)
            .changedTo(after, returns.settled().seconds())
        : null;
  }

  /** Whether another supply feeds from what seemed to be a short gap on, up to its fit. */
  private boolean isTakenOver(Edge loss, Supply following, Edge settled) {
    if (settled.seconds() - loss.seconds() > recording.task().cycleSeconds()) {
      return false;
    }
    int returned = (int) Math.max(0, recording.time().indexAt(settled.seconds()));
    int latest = returned + (int) (TAKEN_OVER_CYCLES * recording.samplesPerCycle());
    return new SupplyBreaks(recording, following).followedFrom(returned) <= latest;
  }

  /**
   * Whether the load was left: for long enough, beyond the doubt of both ends, and either to a
   * residue away from the supply before or to anything else but that supply. A spike, a notch or a
   * ring on a healthy supply follows it but for moments. An output with steps of its own is another
   * supply beyond doubt, wherever in its rest it came.
   */
  private boolean isInterruption(Edge loss, Edge settled, Supply following) {
    double seconds = settled.seconds() - loss.seconds();
    double doubt = BEYOND_DOUBT * Math.hypot(loss.standardSeconds(), settled.standardSeconds());
    boolean isShown = seconds - doubt >= SHORTEST_PROVED_SECONDS || following.hasSteps();
    if (seconds < SHORTEST_GAP_SECONDS || !isShown) {
      return false;
    }
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(loss.seconds())));
    int to = (int) Math.ceil(recording.time().indexAt(settled.seconds()));
    int end = Math.min(to, recording.length());
    boolean isVague = doubt > BEYOND_DOUBT * VAGUE_SECONDS && !following.hasSteps();
    if (isVague && isFedThroughout(from, end, following)) {
      return false;
    }
    if (new Sag(recording, before).begins(from, end)
        || new FedAtOnce(recording, before).isFed(from, end)) {
      return false;
    }
    double[] suppliedBefore = before.voltsIn(recording.time(), from, end);
    double apart = APART_SHARE_OF_PEAK * recording.peakVolts();
    int left = 0;
    int followed = 0;
    double farthest = 0;
    for (int i = from; i < end; i++) {
      double at = recording.time().secondsAt(i);
      double residual = residue.voltsAt(at);
      double supplied = suppliedBefore[i - from];
      if (Math.abs(recording.volts()[i] - residual) < apart) {
        left++;
        farthest = Math.max(farthest, Math.abs(residual - supplied));
      }
      if (Math.abs(recording.volts()[i] - supplied) < apart) {
        followed++;
      }
    }
    boolean isLeft = left > LEFT_SHARE * (to - from) && farthest > apart;
    return isLeft || followed < FOLLOWING_SHARE * (to - from);
  }

  /** Whether each sample is that of one of the two supplies, which go over into each other. */
  private boolean isFedThroughout(int from, int end, Supply following) {
    double[] suppliedBefore = before.voltsIn(recording.time(), from, end);
    double[] suppliedAfter = following.voltsIn(recording.time(), from, end);
    double apart =
        Math.max(
            FED_SHARE_OF_PEAK * recording.peakVolts(),
            FED_NOISES * before.harmonics().noiseVolts());
    int neither = 0;
    for (int i = from; i < end; i++) {
      double volts = recording.volts()[i];
      boolean isFed =
          Math.abs(volts - suppliedBefore[i - from]) < apart
              || Math.abs(volts - suppliedAfter[i - from]) < apart;
      neither += isFed ? 0 : 1;
    }
    return neither * recording.time().intervalSeconds() < SHORTEST_PROVED_SECONDS;
  }

  /** Null where what is shown is too short for a gap, or another supply that goes on feeding. */
  private @Nullable Outcome noReturn(Edge loss, Edge lastOpening) {
    ShownGap.End shown = shownFrom(lastOpening);
    boolean isDead = shown.seconds() - lastOpening.seconds() >= SHORTEST_DEAD_SECONDS;
    Edge opening = isDead ? lastOpening : loss;
    ShownGap.End end = isDead ? shown : shownFrom(loss);
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(opening.seconds())));
    boolean isGap =
        end.seconds() - loss.seconds() >= SHORTEST_DEAD_SECONDS
            && !new FedAtOnce(recording, before).isFed(from, recording.length());
    return isGap ? noReturn(loss, opening, end) : null;
  }

  private ShownGap.End shownFrom(Edge opening) {
    int opened = (int) Math.max(0, Math.ceil(recording.time().indexAt(opening.seconds())));
    boolean isMadeSince = residue.explainedTo() <= opened;
    Residue left = isMadeSince ? GapResidue.find(recording, before, after, opened) : residue;
    return ShownGap.end(recording, left, before.harmonics().noiseVolts(), opening.seconds());
  }

  private Outcome noReturn(Edge loss, Edge lastOpening, ShownGap.End shown) {
    double end = shown.seconds();
    GapFigures figures = new GapFigures(recording, loss.seconds(), end);
    UncertaintyBudget budget = budgets().ofNoReturn(loss, end - loss.seconds());
    return new NoReturn(
        recording.task().event(),
        loss.seconds(),
        lastOpening.seconds(),
        (end - loss.seconds()) * 1e3,
        budget.expandedMillis(),
        before.model().angleDegreesAt(loss.seconds()),
        figures.deadMillis(),
        new Supplies(before.model().frequencyHertz(), null, null, null),
        shown.isBack(),
        budget);
  }

  private Outcome measured(Edge loss, Edge lastOpening, GapEnds.Returns returns, Supply following) {
    Edge settled = returns.settled();
    GapFigures figures = new GapFigures(recording, loss.seconds(), settled.seconds());
    double transferMillis = (settled.seconds() - loss.seconds()) * 1e3;
    return new Measured(
        recording.task().event(),
        loss.seconds(),
        lastOpening.seconds(),
        returns.firstSeconds(),
        settled.seconds(),
        transferMillis,
        budgets().ofGap(loss, returns),
        furtherInterruptions(settled, following),
        figures.deadMillis(),
        figures.usableMillis(following),
        figures.recoveryMillis(following),
        before.model().angleDegreesAt(loss.seconds()),
        SupplySteps.between(before, following, settled.seconds(), recording.task()),
        cleanness(loss, returns, following),
        OtherChannels.NONE);
  }

  private GapBudget budgets() {
    return new GapBudget(recording, before.harmonics().noiseVolts());
  }

  private Cleanness cleanness(Edge loss, GapEnds.Returns returns, Supply following) {
    var instants =
        new CleannessFigures.Instants(
            loss.seconds(), returns.firstSeconds(), returns.settled().seconds());
    return new CleannessFigures(recording, before, following, instants).figures(runs);
  }

  /** A break within one cycle after the return would have moved it. */
  private FurtherInterruptions furtherInterruptions(Edge settled, Supply following) {
    double fedSeconds = settled.seconds() + recording.task().cycleSeconds();
    return new FurtherBreaks(recording, following).from(fedSeconds, settled.seconds());
  }
}

package mainsgap.transfer.gap;

import java.util.List;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.event.UnbrokenSupply;
import mainsgap.transfer.instant.GapEnds;
import mainsgap.transfer.instant.GapResidue;
import mainsgap.transfer.instant.GapTopology;
import mainsgap.transfer.instant.Returns;
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
import mainsgap.transfer.supply.SupplyDifferences;
import org.jspecify.annotations.Nullable;

/** Takes the figures of a gap between its ends, or tells that there is none. */
public final class GapMeasurement {
  /** Fewer cycles, as between two sags, tell no frequency and no phase that then changes. */
  private static final double FEWEST_CYCLES_FOLLOWED = 1.5;

  /** A load that is dead for less, at the record's end, may be one that is fed and crosses zero. */
  private static final double SHORTEST_DEAD_SECONDS = 2e-3;

  /** A supply that takes over is followed so soon. */
  private static final double TAKEN_OVER_CYCLES = 0.25;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final GapEnds ends;
  private final UnbrokenSupply unbroken;

  /**
   * Of one event.
   *
   * @param after the supply that the load settles on; null where none feeds it
   * @param ends where the gap begins and ends
   * @param unbroken judges where there turns out to be no gap
   */
  public GapMeasurement(
      Recording recording,
      Supply before,
      @Nullable Supply after,
      GapTopology topology,
      GapEnds ends,
      UnbrokenSupply unbroken) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = topology.runs();
    this.residue = topology.residue();
    this.ends = ends;
    this.unbroken = unbroken;
  }

  /** The outcome of the event; null where the departure turns out to be none. */
  public @Nullable Outcome outcome() {
    if (!ends.hasGap()) {
      if (before.to() - before.from() < FEWEST_CYCLES_FOLLOWED * recording.samplesPerCycle()) {
        return null;
      }
      return unbroken.changedTo(after, ends.changeSeconds());
    }
    Edge loss = ends.loss();
    Edge lastOpening = ends.lastOpening(loss);
    if (after == null || !ends.hasReturn()) {
      return noReturn(loss, lastOpening);
    }
    Returns returns = ends.returns(lastOpening);
    if (new GapProof(recording, before, after, residue).isGap(loss, returns.settled())) {
      return measured(loss, lastOpening, returns, after);
    }
    return isTakenOver(loss, after, returns.settled())
        ? unbroken.changedTo(after, returns.settled().seconds())
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
    return ShownGap.end(recording, left, before.usualSpreadVolts(), opening.seconds());
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

  private Outcome measured(Edge loss, Edge lastOpening, Returns returns, Supply following) {
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
        SupplyDifferences.between(before, following, settled.seconds(), recording.task()),
        cleanness(loss, returns, following),
        OtherChannels.NONE);
  }

  private GapBudget budgets() {
    return new GapBudget(recording, before.usualSpreadVolts(), before.isVagueInPlaces());
  }

  private Cleanness cleanness(Edge loss, Returns returns, Supply following) {
    var instants =
        new CleannessFigures.ReturnInstants(
            loss.seconds(), returns.firstSeconds(), returns.settled().seconds());
    return new CleannessFigures(recording, before, following, instants).figures(runs);
  }

  /** A break within one cycle after the return would have moved it. */
  private FurtherInterruptions furtherInterruptions(Edge settled, Supply following) {
    double fedSeconds = settled.seconds() + recording.task().cycleSeconds();
    return new FurtherBreaks(recording, following).from(fedSeconds, settled.seconds());
  }
}

package mainsgap.transfer.instant;

import java.util.List;
import java.util.Objects;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Locates the ends of a gap whose runs are known: its openings and its makes. */
public final class GapEnds {
  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final Instants instants;
  private final GapSearches searches;

  public GapEnds(Recording recording, Supply before, @Nullable Supply after, GapTopology topology) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = topology.runs();
    this.residue = topology.residue();
    this.instants = new Instants(recording, before, residue, after);
    this.searches = new GapSearches(recording, runs, residue);
  }

  public boolean hasGap() {
    return indexOf(Segmentation.Part.GAP) >= 0;
  }

  public boolean hasReturn() {
    return indexOf(Segmentation.Part.AFTER) >= 0;
  }

  /** Where the supply after takes over without a gap; the middle of the record if it never does. */
  public double changeSeconds() {
    int firstAfter = indexOf(Segmentation.Part.AFTER);
    int index = firstAfter < 0 ? recording.length() / 2 : runs.get(firstAfter).from();
    return recording.time().secondsAt(index - 0.5);
  }

  /** The first opening, that of the contact itself where it went on conducting through an arc. */
  public Edge loss() {
    Instants.Search search = searches.loss(indexOf(Segmentation.Part.GAP));
    Edge found = instants.leaving(search);
    Edge left = new LeavingFit(recording, before, residue, search).better(found);
    ArcStart arc = new ArcStart(recording, before);
    boolean isFollowed = !left.equals(found) && residue.isVisible(recording);
    Edge opened = isFollowed ? arc.endingAt(left) : arc.before(left, residue);
    Edge close = opened == null ? ShortArc.about(recording, before, left, residue) : opened;
    Edge lost = close == null ? left : close;
    Edge rest = new RestLoss(recording, before, residue).bounded(lost);
    return rest == null ? lost : rest;
  }

  /**
   * The last opening of the contact that was lost, each within one cycle of the one before; {@code
   * loss} where it opened but once.
   */
  public Edge lastOpening(Edge loss) {
    int firstGap = indexOf(Segmentation.Part.GAP);
    int last = firstGap;
    for (int k = firstGap + 1; k < runs.size(); k++) {
      boolean isLater = runs.get(k).from() - runs.get(last).from() > recording.samplesPerCycle();
      if (isLater || runs.get(k).part() == Segmentation.Part.AFTER) {
        break;
      }
      if (runs.get(k).part() == Segmentation.Part.GAP) {
        last = k;
      }
    }
    return last == firstGap ? loss : loss(last);
  }

  /**
   * The makes, out of the gap into the supply after.
   *
   * @param opened the last opening
   */
  public Returns returns(Edge opened) {
    Supply following = Objects.requireNonNull(after, "nothing returns without a supply after");
    return new GapReturns(recording, before, following, runs, residue).returns(opened);
  }

  private Edge loss(int gapIndex) {
    Instants.Search search = searches.loss(gapIndex);
    return new LeavingFit(recording, before, residue, search).better(instants.leaving(search));
  }

  private int indexOf(Segmentation.Part part) {
    return Segmentation.first(runs, part);
  }
}

package mainsgap.transfer.instant;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.supply.OwnShape;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Locates the ends of a gap whose runs are known: its openings and its makes. */
public final class GapEnds {
  /** No contact bounces more often; what seems to is the output's own shape. */
  private static final int MOST_BOUNCES = 20;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final Instants instants;
  private final GapSearches searches;

  /**
   * The makes that end a gap.
   *
   * @param firstSeconds when the load was first fed again
   * @param settled from when on it is fed without a break
   * @param inRest whether the settled one lies within a rest of the output, where it does not show
   */
  public record Returns(double firstSeconds, Edge settled, boolean inRest) {}

  public GapEnds(Recording recording, Supply before, @Nullable Supply after, GapTopology topology) {
    this(recording, before, after, topology.runs(), topology.residue());
  }

  private GapEnds(
      Recording recording,
      Supply before,
      @Nullable Supply after,
      List<Segmentation.Run> runs,
      Residue residue) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = runs;
    this.residue = residue;
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
   * The makes, out of the gap into the supply after.
   *
   * @param opened the last opening
   */
  public Returns returns(Edge opened) {
    Supply following = Objects.requireNonNull(after, "nothing returns without a supply after");
    int firstAfter = indexOf(Segmentation.Part.AFTER);
    GapResidue.CutOff cutOff = GapResidue.behind(recording, before, following, residue);
    if (cutOff != null && isIn(cutOff, runs.get(firstAfter - 1))) {
      return endsBehind(cutOff, firstAfter).returns(cutOffAt(cutOff, opened));
    }
    Instants.Search search = searches.arrival(firstAfter);
    List<Integer> steps = steps(search, following);
    Makes makes = steps.isEmpty() ? makes(search, following) : makesFrom(last(steps), following);
    RestReturn rest = following.hasSteps() ? new RestReturn(recording, residue, following) : null;
    Segmentation.Run bounce = lastBounce(makes, following, rest);
    Edge settled = bounce == null ? makes.first() : lastMake(bounce);
    if (rest != null) {
      double dead = bounce == null ? opened.seconds() : recording.time().secondsAt(bounce.from());
      boolean isKnown = bounce == null && !steps.isEmpty();
      return ofSteppedOutput(rest, opened, settled, isKnown ? null : rest.bounded(dead, settled));
    }
    boolean bounced =
        bounce != null
            || steps.size() > 1
            || (!steps.isEmpty() && steps.get(0) >= runs.get(firstAfter).to());
    RisingReturn.Located located =
        new RisingReturn(recording, before, residue, following, opened).locate(settled, bounced);
    if (located != null && located.rises()) {
      return new Returns(located.edge().seconds(), located.edge(), false);
    }
    settled = located == null ? settled : located.edge();
    Edge first = bounced ? firstMake(firstAfter, steps, search) : settled;
    DischargedBreak.Found open = discharged(following).lastAfter(settled);
    if (open != null && !new OwnShape(recording, following).is(open.from(), open.to())) {
      settled = lastMake(open, following);
    }
    return new Returns(Math.min(first.seconds(), settled.seconds()), settled, false);
  }

  private static boolean isIn(GapResidue.CutOff cutOff, Segmentation.Run gap) {
    return gap.from() < cutOff.from() && cutOff.from() < gap.to();
  }

  /** The same gap without what swung in it. */
  private GapEnds endsBehind(GapResidue.CutOff cutOff, int firstAfter) {
    List<Segmentation.Run> behind = new ArrayList<>(runs);
    Segmentation.Run gap = runs.get(firstAfter - 1);
    behind.set(firstAfter - 1, new Segmentation.Run(gap.part(), cutOff.from(), gap.to()));
    return new GapEnds(recording, before, after, behind, cutOff.residue());
  }

  /** Known to a sample. */
  private Edge cutOffAt(GapResidue.CutOff cutOff, Edge opened) {
    return new Edge(
        recording.time().secondsAt(cutOff.from() - 0.5),
        recording.time().intervalSeconds() / Math.sqrt(12),
        0,
        0,
        EdgeShape.ABRUPT,
        opened.window(),
        opened.laterVolts());
  }

  /** Its first make is told by the samples that it feeds: its own rests and steps are no bounce. */
  private Returns ofSteppedOutput(
      RestReturn rest, Edge opened, Edge found, @Nullable Edge bounded) {
    Edge settled = bounded == null ? found : bounded;
    int fed = rest.firstFed(opened.seconds(), settled.seconds());
    double first = Math.min(recording.time().secondsAt(fed - 0.5), settled.seconds());
    return new Returns(first, settled, bounded != null && bounded.modelSeconds() > 0);
  }

  private int indexOf(Segmentation.Part part) {
    for (int k = 0; k < runs.size(); k++) {
      if (runs.get(k).part() == part) {
        return k;
      }
    }
    return -1;
  }

  private Edge loss(int gapIndex) {
    Instants.Search search = searches.loss(gapIndex);
    return new LeavingFit(recording, before, residue, search).better(instants.leaving(search));
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

  /** The last of the breaks that each begin within one cycle after the make before; else null. */
  private Segmentation.@Nullable Run lastBounce(
      Makes makes, Supply following, @Nullable RestReturn rest) {
    OwnShape own = new OwnShape(recording, following);
    Segmentation.Run last = null;
    double madeAt = makes.first().seconds();
    int bounces = 0;
    for (Segmentation.Run run : makes.breaks()) {
      if (own.is(run.from(), run.to()) || (rest != null && !rest.isBreak(run))) {
        continue;
      }
      if (recording.time().secondsAt(run.from()) - madeAt > recording.task().cycleSeconds()) {
        break;
      }
      if (++bounces > MOST_BOUNCES) {
        throw restsAgainAndAgain(makes.first().seconds());
      }
      last = run;
      madeAt = recording.time().secondsAt(run.to());
    }
    return last;
  }

  /** The shape of its cycle was not told, or it starts and fails cycle by cycle. */
  private static CannotMeasureException restsAgainAndAgain(double returnSeconds) {
    return new CannotMeasureException(
        String.format(
            Locale.ROOT,
            "behind its return at %.1f ms of the time axis the output lies at zero more than %d times"
                + " less than a cycle apart, so that no return is the last: look at the trace, and"
                + " record with less noise and more settled cycles",
            1e3 * returnSeconds,
            MOST_BOUNCES));
  }

  private DischargedBreak discharged(Supply following) {
    return new DischargedBreak(recording, residue, following, noiseVolts(following));
  }

  private double noiseVolts(Supply following) {
    return Math.max(before.usualSpreadVolts(), following.usualSpreadVolts());
  }

  private Makes makes(Instants.Search search, Supply following) {
    double noise = before.usualSpreadVolts();
    return Makes.find(recording, residue, following, noise, instants, search, runs);
  }

  private List<Integer> steps(Instants.Search search, Supply following) {
    int cycle = (int) Math.ceil(recording.samplesPerCycle());
    List<Integer> makes =
        new Steps(recording, residue, following, noiseVolts(following))
            .makes(search.first(), search.to() + cycle, cycle);
    boolean isOfReturn =
        makes.isEmpty() || makes.get(0) <= search.last() || isAfterBounce(makes.get(0));
    return isOfReturn ? makes : List.of();
  }

  /**
   * A make that showed no step, as at a crossing, may have bounced; what comes later is another.
   */
  private boolean isAfterBounce(int step) {
    int fed = runs.get(indexOf(Segmentation.Part.AFTER)).from();
    return runs.stream()
        .filter(run -> run.part() == Segmentation.Part.BREAK)
        .anyMatch(run -> run.from() - fed <= recording.samplesPerCycle() && run.from() < step);
  }

  private static int last(List<Integer> steps) {
    return steps.get(steps.size() - 1);
  }

  /** The first make of a contact that bounced: looked for only up to where it breaks again. */
  private Edge firstMake(int firstAfter, List<Integer> steps, Instants.Search search) {
    Segmentation.Run fed = runs.get(firstAfter);
    if (!steps.isEmpty() && steps.get(0) <= fed.from()) {
      int step = steps.get(0);
      int to = steps.size() > 1 ? steps.get(1) : fed.to();
      return instants.arriving(new Instants.Search(Math.max(0, step - 2), to, step, step));
    }
    int to = Math.min(search.to(), fed.to());
    return instants.arriving(
        new Instants.Search(search.from(), to, search.first(), Math.min(search.last(), to - 1)));
  }

  /** The makes from a step on, whose place is known to a sample. */
  private Makes makesFrom(int step, Supply following) {
    int reach = recording.samplesIn(2 * GapSearches.REACH_SECONDS);
    int to = Math.min(recording.length(), step + reach);
    return makes(new Instants.Search(Math.max(0, step - 2), to, step, step), following);
  }

  /** The make that ends the break {@code bounce}; its first half may still decay. */
  private Edge lastMake(Segmentation.Run bounce) {
    return instants.arriving(out((bounce.from() + bounce.to()) / 2, bounce.to()));
  }

  /** The same out of a load that discharges. */
  private Edge lastMake(DischargedBreak.Found bounce, Supply following) {
    return new Instants(recording, before, bounce.residue(), following)
        .arriving(out(bounce.openTo(), 2 * bounce.to() - bounce.from()));
  }

  /** About a make that lies behind sample {@code from}, up to a half later than {@code to}. */
  private Instants.Search out(int from, int to) {
    int latest = to + Math.max(2, (to - from) / 2);
    int end = Math.min(recording.length(), to + recording.samplesIn(GapSearches.REACH_SECONDS));
    return new Instants.Search(from, end, from + 1, Math.min(end - 1, latest));
  }
}

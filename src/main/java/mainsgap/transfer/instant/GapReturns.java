package mainsgap.transfer.instant;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.supply.OwnShape;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Segmentation;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/** Locates the makes of a gap whose runs are known: the first, and the one that stays. */
final class GapReturns {
  /** No contact bounces more often; what seems to is the output's own shape. */
  private static final int MOST_BOUNCES = 20;

  private final Recording recording;
  private final Supply before;
  private final Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final Instants instants;
  private final GapSearches searches;
  private final int firstAfter;

  /**
   * Of one gap.
   *
   * @param after the supply that ends it
   * @param runs what feeds the load, run by run; {@code after} feeds in one of them, not the first
   */
  GapReturns(
      Recording recording,
      Supply before,
      Supply after,
      List<Segmentation.Run> runs,
      Residue residue) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = runs;
    this.residue = residue;
    this.instants = new Instants(recording, before, residue, after);
    this.searches = new GapSearches(recording, runs, residue);
    this.firstAfter = Segmentation.first(runs, Segmentation.Part.AFTER);
  }

  /**
   * The makes, out of the gap into the supply after.
   *
   * @param opened the last opening
   */
  Returns returns(Edge opened) {
    GapResidue.CutOff cutOff = GapResidue.behind(recording, before, after, residue);
    if (cutOff != null && isIn(cutOff, runs.get(firstAfter - 1))) {
      return behind(cutOff).returns(cutOffAt(cutOff, opened));
    }
    Instants.Search search = searches.arrival(firstAfter);
    List<Integer> steps = steps(search);
    Makes makes = steps.isEmpty() ? makes(search) : makesFrom(last(steps));
    RestReturn rest = after.hasSteps() ? new RestReturn(recording, residue, after) : null;
    Segmentation.Run bounce = lastBounce(makes, rest);
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
        new RisingReturn(recording, before, residue, after, opened).locate(settled, bounced);
    if (located != null && located.rises()) {
      return new Returns(located.edge().seconds(), located.edge(), false);
    }
    settled = located == null ? settled : located.edge();
    Edge first = bounced ? firstMake(steps, search) : settled;
    OpenedAgain open = openedAfter(first, settled);
    settled = open == null ? settled : lastMake(open);
    return new Returns(Math.min(first.seconds(), settled.seconds()), settled, false);
  }

  private static boolean isIn(GapResidue.CutOff cutOff, Segmentation.Run gap) {
    return gap.from() < cutOff.from() && cutOff.from() < gap.to();
  }

  /** The same gap without what swung in it. */
  private GapReturns behind(GapResidue.CutOff cutOff) {
    List<Segmentation.Run> behind = new ArrayList<>(runs);
    Segmentation.Run gap = runs.get(firstAfter - 1);
    behind.set(firstAfter - 1, new Segmentation.Run(gap.part(), cutOff.from(), gap.to()));
    return new GapReturns(recording, before, after, behind, cutOff.residue());
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

  /** The last of the breaks that each begin within one cycle after the make before; else null. */
  private Segmentation.@Nullable Run lastBounce(Makes makes, @Nullable RestReturn rest) {
    OwnShape own = new OwnShape(recording, after);
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

  /** The break on a load that discharges, behind the make that was located; null for none. */
  private @Nullable OpenedAgain openedAfter(Edge first, Edge made) {
    double noise = noiseVolts();
    OwnShape own = new OwnShape(recording, after);
    OpenedAgain seen = new DischargedBreak(recording, residue, after, noise).lastAfter(made);
    if (seen != null && !own.is(seen.from(), seen.to())) {
      return seen;
    }
    OpenedAgain bent = new BentBreak(recording, residue, after, first, made, noise).found();
    boolean isBreak =
        bent != null && !own.is(bent.from(), bent.to()) && !own.isMirrored(bent.from(), bent.to());
    return isBreak ? bent : null;
  }

  private double noiseVolts() {
    return Math.max(before.usualSpreadVolts(), after.usualSpreadVolts());
  }

  private Makes makes(Instants.Search search) {
    double noise = before.usualSpreadVolts();
    return Makes.find(recording, residue, after, noise, instants, search, runs);
  }

  private List<Integer> steps(Instants.Search search) {
    int cycle = (int) Math.ceil(recording.samplesPerCycle());
    List<Integer> makes =
        new Steps(recording, residue, after, noiseVolts())
            .makes(search.first(), search.to() + cycle, cycle);
    boolean isOfReturn =
        makes.isEmpty() || makes.get(0) <= search.last() || isAfterBounce(makes.get(0));
    return isOfReturn ? makes : List.of();
  }

  /**
   * A make that showed no step, as at a crossing, may have bounced; what comes later is another.
   */
  private boolean isAfterBounce(int step) {
    int fed = runs.get(firstAfter).from();
    return runs.stream()
        .filter(run -> run.part() == Segmentation.Part.BREAK)
        .anyMatch(run -> run.from() - fed <= recording.samplesPerCycle() && run.from() < step);
  }

  private static int last(List<Integer> steps) {
    return steps.get(steps.size() - 1);
  }

  /** The first make of a contact that bounced: looked for only up to where it breaks again. */
  private Edge firstMake(List<Integer> steps, Instants.Search search) {
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
  private Makes makesFrom(int step) {
    int reach = recording.samplesIn(2 * GapSearches.REACH_SECONDS);
    int to = Math.min(recording.length(), step + reach);
    return makes(new Instants.Search(Math.max(0, step - 2), to, step, step));
  }

  /** The make that ends the break {@code bounce}; its first half may still decay. */
  private Edge lastMake(Segmentation.Run bounce) {
    return instants.arriving(out((bounce.from() + bounce.to()) / 2, bounce.to()));
  }

  /** The same out of a load that discharges. */
  private Edge lastMake(OpenedAgain bounce) {
    return new Instants(recording, before, bounce.residue(), after)
        .arriving(out(bounce.openTo(), 2 * bounce.to() - bounce.from()));
  }

  /** About a make that lies behind sample {@code from}, up to a half later than {@code to}. */
  private Instants.Search out(int from, int to) {
    int latest = to + Math.max(2, (to - from) / 2);
    int end = Math.min(recording.length(), to + recording.samplesIn(GapSearches.REACH_SECONDS));
    return new Instants.Search(from, end, from + 1, Math.min(end - 1, latest));
  }
}

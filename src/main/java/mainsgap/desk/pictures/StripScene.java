package mainsgap.desk.pictures;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.TrialReport;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/**
 * All that the strip shows; immutable.
 *
 * @param points one for each trial, in the order of their numbers
 * @param declaredMillis null where nothing is declared
 * @param declaredWords empty where nothing is declared
 * @param guardMillis half-width of the band about the declared time in which nothing is shown; 0
 *     for none
 * @param boundMillis the upper tolerance bound so far; null where there is none yet
 */
record StripScene(
    List<StripPoint> points,
    @Nullable Double declaredMillis,
    String declaredWords,
    double guardMillis,
    @Nullable Double boundMillis) {
  static final StripScene EMPTY = new StripScene(List.of(), null, "", 0, null);

  /** Free to the right of the last thing shown, as a share of the axis. */
  private static final double MARGIN = 0.08;

  /** Of an axis on which there is nothing yet. */
  private static final double USUAL_END_MILLIS = 20;

  StripScene {
    points = List.copyOf(points);
  }

  static StripScene of(
      List<TrialReport> trials, @Nullable DeclaredClaim claim, RunningFigures figures) {
    List<StripPoint> points =
        trials.stream()
            .map(StripPoint::of)
            .sorted(java.util.Comparator.comparingInt(StripPoint::number))
            .toList();
    Double guarded = figures.guardedLimitMillis();
    Double declared = claim == null ? null : (Double) claim.millis();
    return new StripScene(
        points,
        declared,
        claim == null ? "" : MillisWords.declared(claim),
        guarded == null || declared == null ? 0 : Math.max(0, declared - guarded),
        figures.upperToleranceBoundMillis());
  }

  /**
   * Where the axis ends, which starts at 0: it holds the declared time, the bound and every time
   * with both its ends. A trial without return may lie beyond, where it would press the others
   * together.
   */
  double endMillis() {
    Stream<Double> marks = Stream.of(declaredMillis, boundMillis).filter(m -> m != null);
    Stream<Double> times = points.stream().filter(p -> !p.isAtLeast()).map(StripPoint::endMillis);
    double most = Stream.concat(marks, times).mapToDouble(Double::doubleValue).max().orElse(0);
    most = Math.max(most, declaredMillis == null ? 0 : declaredMillis + guardMillis);
    if (most == 0) {
      most = points.stream().mapToDouble(StripPoint::endMillis).max().orElse(0);
    }
    return most == 0 ? USUAL_END_MILLIS : most * (1 + MARGIN);
  }

  /** Whether there is no second line beside the declared time or the bound. */
  boolean isLoneLine() {
    return declaredMillis == null || boundMillis == null;
  }

  /** The largest U among the trials; 0 where none has one. */
  double largestUncertaintyMillis() {
    return points.stream().mapToDouble(StripPoint::uncertaintyMillis).max().orElse(0);
  }

  @Nullable StripPoint point(@Nullable Integer number) {
    return points.stream()
        .filter(point -> number != null && point.number() == number)
        .findFirst()
        .orElse(null);
  }

  /** How many trials there are of each kind, in words. */
  String counts() {
    if (points.isEmpty()) {
      return "No trial yet.";
    }
    Map<TrialMark, Long> counts =
        points.stream()
            .collect(Collectors.groupingBy(StripPoint::mark, TreeMap::new, Collectors.counting()));
    return MillisWords.counted(points.size(), "trial")
        + counts.entrySet().stream()
            .map(count -> count.getValue() + " " + count.getKey().words())
            .collect(Collectors.joining(", ", ": ", ""));
  }

  /** The picture, for who hears it read out. */
  String words() {
    return Stream.of(
            counts(),
            declaredWords,
            guardMillis > 0 ? "guard band ± " + MillisWords.millis(guardMillis) : "",
            boundWords())
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("; "));
  }

  String boundWords() {
    return boundMillis == null ? "" : "upper bound " + MillisWords.millis(boundMillis);
  }
}

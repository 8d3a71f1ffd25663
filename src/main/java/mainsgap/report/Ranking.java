package mainsgap.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * Units in their order. Only series of the same event and nominal values are ranked: the others are
 * shown behind them, marked.
 *
 * @param by what is ranked
 * @param task what the ranked ones measured: that of most sessions, of the first where two are even
 * @param places in the order to be shown
 * @param refusals a sentence for each series that is not compared
 */
public record Ranking(RankBy by, MeasuringTask task, List<Place> places, List<String> refusals) {

  /** Stands beside a series that is not compared. */
  static final String NOT_COMPARED = "not compared";

  /**
   * One series.
   *
   * @param rank from 1, the same where two are even; null where it is not compared, or has no
   *     figure
   */
  public record Place(@Nullable Integer rank, UnitSeries series, boolean isCompared) {}

  /** Takes its own copies. */
  public Ranking {
    places = List.copyOf(places);
    refusals = List.copyOf(refusals);
  }

  /**
   * Ranks the series.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static Ranking of(List<UnitSeries> series, RankBy by) {
    MeasuringTask task = mostCommon(series);
    List<UnitSeries> compared =
        series.stream()
            .filter(one -> one.task().equals(task))
            .sorted(Comparator.comparing(by::of, Comparator.nullsLast(Comparator.naturalOrder())))
            .toList();
    List<Place> places = new ArrayList<>();
    for (UnitSeries one : compared) {
      places.add(new Place(rank(one, compared, by), one, true));
    }
    List<String> refusals = new ArrayList<>();
    for (UnitSeries one : series) {
      if (!one.task().equals(task)) {
        places.add(new Place(null, one, false));
        refusals.add(refusal(one, task));
      }
    }
    return new Ranking(by, task, places, refusals);
  }

  private static MeasuringTask mostCommon(List<UnitSeries> series) {
    Map<MeasuringTask, Integer> counts = new LinkedHashMap<>();
    series.forEach(one -> counts.merge(one.task(), 1, Integer::sum));
    MeasuringTask most = null;
    int count = 0;
    for (Map.Entry<MeasuringTask, Integer> entry : counts.entrySet()) {
      if (entry.getValue() > count) {
        most = entry.getKey();
        count = entry.getValue();
      }
    }
    if (most == null) {
      throw new IllegalArgumentException("a ranking needs at least one series, found none");
    }
    return most;
  }

  /** One more than the number of those that are better; none where one is alone. */
  private static @Nullable Integer rank(UnitSeries one, List<UnitSeries> compared, RankBy by) {
    Double figure = by.of(one);
    if (figure == null || compared.size() < 2) {
      return null;
    }
    int better = 0;
    for (UnitSeries other : compared) {
      Double theirs = by.of(other);
      better += theirs != null && theirs < figure ? 1 : 0;
    }
    return 1 + better;
  }

  private static String refusal(UnitSeries one, MeasuringTask task) {
    return "Not compared: "
        + one.name()
        + " shows "
        + Wording.task(one.task())
        + ", the ranked ones "
        + Wording.task(task)
        + ": a rank would mean nothing.";
  }
}

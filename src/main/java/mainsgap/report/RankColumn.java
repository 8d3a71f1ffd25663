package mainsgap.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * One column of figures in the table of the ranking.
 *
 * @param heading above it
 * @param words of each place, in their order
 * @param importance where there is no room for all columns, the least important go
 */
record RankColumn(String heading, List<String> words, int importance) {
  private static final String NONE = "-";

  /** What the units are ranked by stays in any case. */
  private static final int RANKED_BY = 9;

  RankColumn {
    words = List.copyOf(words);
  }

  /** All columns that say something, from left to right. */
  static List<RankColumn> of(Ranking ranking) {
    List<SeriesWords> figures =
        ranking.places().stream().map(place -> SeriesWords.of(place.series())).toList();
    RankBy by = ranking.by();
    List<RankColumn> columns = new ArrayList<>();
    columns.add(new RankColumn("n", words(figures, SeriesWords::n), 3));
    columns.add(
        new RankColumn(
            "mean", words(figures, SeriesWords::mean), by == RankBy.MEAN ? RANKED_BY : 4));
    columns.add(new RankColumn("s", words(figures, SeriesWords::spread), 2));
    columns.add(
        new RankColumn(
            "largest", words(figures, SeriesWords::largest), by == RankBy.LARGEST ? RANKED_BY : 6));
    columns.add(
        new RankColumn(
            "upper bound",
            words(figures, SeriesWords::bound),
            by == RankBy.UPPER_BOUND ? RANKED_BY : 1));
    if (by == RankBy.RESIDUAL) {
      columns.add(
          new RankColumn(
              "largest residual",
              ranking.places().stream().map(place -> residual(place.series())).toList(),
              RANKED_BY));
    }
    columns.add(new RankColumn("declared", words(figures, SeriesWords::declared), 5));
    columns.add(new RankColumn("verdict", words(figures, SeriesWords::verdict), 7));
    columns.removeIf(column -> column.words().stream().allMatch(NONE::equals));
    return columns;
  }

  /** Those of {@code all} that fit into a width, the most important first to stay. */
  static List<RankColumn> fitting(
      List<RankColumn> all, double width, ToDoubleFunction<RankColumn> widths) {
    List<RankColumn> kept = new ArrayList<>(all);
    while (kept.size() > 1 && kept.stream().mapToDouble(widths).sum() > width) {
      kept.stream().min(Comparator.comparingInt(RankColumn::importance)).ifPresent(kept::remove);
    }
    return kept;
  }

  /** Whether the units are ranked by it. */
  boolean isRankedBy() {
    return importance == RANKED_BY;
  }

  private static List<String> words(List<SeriesWords> figures, Function<SeriesWords, String> word) {
    return figures.stream().map(word).toList();
  }

  private static String residual(UnitSeries series) {
    Double residual = RankBy.RESIDUAL.of(series);
    return residual == null || residual.isInfinite() ? NONE : Wording.plain(residual) + " %";
  }
}

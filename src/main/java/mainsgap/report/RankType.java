package mainsgap.report;

import java.awt.Graphics2D;
import java.util.List;

/**
 * The type of the ranking's rows, which is larger where there are few of them.
 *
 * @param plain for figures
 * @param bold for names, and for the figure by which units are ranked
 * @param textPixels its height
 */
record RankType(Lettering plain, Lettering bold, double textPixels) {
  private static final double COLUMN_GAP = 1.4;

  static RankType of(Graphics2D g, double textPixels) {
    return new RankType(Lettering.plain(g, textPixels), Lettering.bold(g, textPixels), textPixels);
  }

  Lettering of(RankColumn column) {
    return column.isRankedBy() ? bold : plain;
  }

  /** The width of a column with the gap before it. */
  double width(RankColumn column) {
    double most = of(column).width(column.heading());
    for (String words : column.words()) {
      most = Math.max(most, of(column).width(words));
    }
    return most + COLUMN_GAP * textPixels;
  }

  double width(List<RankColumn> columns) {
    return columns.stream().mapToDouble(this::width).sum();
  }

  /** The width of the widest name with its rank. */
  double widest(Ranking ranking) {
    return ranking.places().stream()
        .mapToDouble(place -> bold.width("00. " + place.series().name()))
        .max()
        .orElse(0);
  }
}

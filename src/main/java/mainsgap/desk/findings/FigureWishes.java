package mainsgap.desk.findings;

import mainsgap.report.CleanMeasure;
import mainsgap.report.OverlaidTraces;
import mainsgap.report.RankBy;

/**
 * Which figure a person wants to see, and how.
 *
 * @param kind of figure
 * @param rankBy the order of the units
 * @param measure of cleanness
 * @param alignment of traces
 */
record FigureWishes(
    FigureKind kind, RankBy rankBy, CleanMeasure measure, OverlaidTraces.Alignment alignment) {
  /** Before anything is chosen. */
  static final FigureWishes USUAL =
      new FigureWishes(
          FigureKind.TRIALS, RankBy.LARGEST, CleanMeasure.RESIDUAL, OverlaidTraces.Alignment.LOSS);

  FigureWishes of(FigureKind wanted) {
    return new FigureWishes(wanted, rankBy, measure, alignment);
  }

  FigureWishes by(RankBy wanted) {
    return new FigureWishes(kind, wanted, measure, alignment);
  }

  FigureWishes against(CleanMeasure wanted) {
    return new FigureWishes(kind, rankBy, wanted, alignment);
  }

  FigureWishes alignedAt(OverlaidTraces.Alignment wanted) {
    return new FigureWishes(kind, rankBy, measure, wanted);
  }
}

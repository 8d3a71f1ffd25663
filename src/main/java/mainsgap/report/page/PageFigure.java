package mainsgap.report.page;

import mainsgap.report.Figure;
import mainsgap.report.FigureLook;
import mainsgap.report.FigureSheet;
import mainsgap.report.FigureSvg;

/** Figures as wide as the page, whose text is as large as that beside them. */
final class PageFigure {
  private static final int WIDTH_PIXELS = 1000;
  private static final double TEXT_PIXELS = 15;

  private PageFigure() {}

  /** The figure as an element of the page; {@code name} begins the names within it. */
  static String drawn(Figure figure, int heightPixels, String name) {
    return FigureSvg.element(
        figure, new FigureSheet(WIDTH_PIXELS, heightPixels, TEXT_PIXELS, FigureLook.LIGHT), name);
  }
}

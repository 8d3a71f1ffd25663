package mainsgap.report;

import java.awt.Graphics2D;

/** A figure as data; the same data gives the same drawing on the same machine. Immutable. */
public sealed interface Figure permits TrialStrips, RankTable, FastAgainstClean, OverlaidTraces {

  /** What it shows, in a few words. */
  String title();

  /** Draws it over the whole sheet, from 0, 0 on. */
  void draw(Graphics2D g, FigureSheet sheet);
}

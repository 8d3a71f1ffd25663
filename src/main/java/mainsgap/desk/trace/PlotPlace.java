package mainsgap.desk.trace;

import javafx.geometry.Insets;
import javafx.scene.layout.Region;
import mainsgap.signal.VoltExtent;

/**
 * Where the plot lies in its node, in units of the node.
 *
 * @param left of the plot
 * @param top of the plot
 * @param width of the plot
 * @param height of the plot, with the band for bracket and ruler
 * @param band the height of that band; 0 where there is neither
 * @param em the size of type
 * @param pixelsOfUsual pixels of the screen to a unit
 */
record PlotPlace(
    double left,
    double top,
    double width,
    double height,
    double band,
    double em,
    double pixelsOfUsual) {

  /** Room for '−1000' and the unit. */
  private static final double LEFT_EMS = 3.6;

  private static final double BELOW_EMS = 1.7;
  private static final double RIGHT_EMS = 0.6;
  private static final double BAND_EMS = 3.6;
  private static final double GRID_ACROSS_EMS = 6;
  private static final double GRID_UP_EMS = 2.6;

  /** Lays out the legend over the plot, and the plot in what is left. */
  static PlotPlace within(
      Region node, Legend legend, double em, TraceScene scene, double pixelsOfUsual) {
    Insets insets = node.getInsets();
    double left = insets.getLeft() + LEFT_EMS * em;
    double across = Math.max(1, node.getWidth() - left - insets.getRight() - RIGHT_EMS * em);
    double legendHeight = legend.getChildren().isEmpty() ? 0 : legend.prefHeight(across);
    legend.resizeRelocate(left, insets.getTop(), across, legendHeight);
    double top = insets.getTop() + legendHeight + 0.4 * em;
    double up = Math.max(1, node.getHeight() - top - insets.getBottom() - BELOW_EMS * em);
    boolean marked = scene.gap() != null || scene.ruler() != null;
    double band = marked ? Math.min(BAND_EMS * em, up / 2) : 0;
    return new PlotPlace(
        snapped(left, pixelsOfUsual),
        snapped(top, pixelsOfUsual),
        Math.max(1, Math.floor(across * pixelsOfUsual)) / pixelsOfUsual,
        Math.max(2, Math.floor(up * pixelsOfUsual)) / pixelsOfUsual,
        band,
        em,
        pixelsOfUsual);
  }

  PlotFrame frame(TimeSpan view, VoltExtent volts) {
    return new PlotFrame(
        (int) Math.round(width * pixelsOfUsual),
        (int) Math.round(height * pixelsOfUsual),
        (int) Math.round(band * pixelsOfUsual),
        view,
        volts);
  }

  Grid grid(PlotFrame frame) {
    return Grid.of(frame, GRID_ACROSS_EMS * em * pixelsOfUsual, GRID_UP_EMS * em * pixelsOfUsual);
  }

  /** Where a pixel of the plot lies across the node. */
  double across(double xPixels) {
    return left + xPixels / pixelsOfUsual;
  }

  /** Where a pixel of the plot lies down the node. */
  double down(double yPixels) {
    return top + yPixels / pixelsOfUsual;
  }

  private static double snapped(double units, double pixelsOfUsual) {
    return Math.round(units * pixelsOfUsual) / pixelsOfUsual;
  }
}

package mainsgap.desk.trace;

import java.nio.IntBuffer;
import javafx.scene.control.Label;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.FlowPane;
import mainsgap.signal.VoltExtent;

/** Says which line is which, each beside a piece of it as it is drawn. For the UI thread. */
final class Legend extends FlowPane {
  private static final int SAMPLE_WIDTH = 38;
  private static final int SAMPLE_HEIGHT = 14;

  Legend() {
    getStyleClass().add("trace-legend");
    setManaged(false);
  }

  void show(TraceScene scene, Palette palette, double pixelsOfUsual) {
    getChildren().clear();
    for (int i = 0; i < scene.traces().size(); i++) {
      Sample sample = new Sample(palette, pixelsOfUsual);
      sample.line(Dash.UNBROKEN, ScenePainter.TRACE_NIB + 0.6, palette.trace(i));
      if (scene.traces().size() > 1) {
        sample.mark(Mark.ofTrace(i), palette.trace(i));
      }
      add(scene.traces().get(i).name(), sample);
    }
    for (int i = 0; i < scene.curves().size(); i++) {
      Sample sample = new Sample(palette, pixelsOfUsual);
      sample.line(Dash.ofCurve(i), ScenePainter.CURVE_NIB, palette.curve(i));
      add(scene.curves().get(i).name(), sample);
    }
    applyCss();
  }

  private void add(String name, Sample sample) {
    ImageView picture = new ImageView(sample.image());
    picture.setFitWidth(SAMPLE_WIDTH);
    picture.setFitHeight(SAMPLE_HEIGHT);
    Label label = new Label(name, picture);
    label.getStyleClass().add("trace-legend-entry");
    getChildren().add(label);
  }

  /** A short level piece of a line. */
  private static final class Sample {
    private final int width;
    private final int height;
    private final int[] pixels;
    private final Raster raster;
    private final Palette palette;
    private final double pixelsOfUsual;

    Sample(Palette palette, double pixelsOfUsual) {
      this.palette = palette;
      this.pixelsOfUsual = pixelsOfUsual;
      width = (int) Math.round(SAMPLE_WIDTH * pixelsOfUsual);
      height = (int) Math.round(SAMPLE_HEIGHT * pixelsOfUsual);
      pixels = new int[width * height];
      raster = new Raster(pixels, width, height);
      raster.fill(palette.ground());
    }

    void line(Dash dash, double nib, int argb) {
      PlotFrame frame = new PlotFrame(width, height, 0, new TimeSpan(0, 1), new VoltExtent(-1, 1));
      Outline outline = new Outline(width);
      outline.take(new Curve("", seconds -> 0, new TimeSpan(0, 1), 1), frame);
      outline.breakUp(dash, frame, pixelsOfUsual);
      new Pen(raster).draw(outline, 0, nib * pixelsOfUsual, argb);
    }

    void mark(Mark mark, int argb) {
      double radius = ScenePainter.MARK_RADIUS * pixelsOfUsual;
      mark.draw(raster, width / 2.0, height / 2.0, radius, argb, palette.ground());
    }

    Image image() {
      return new WritableImage(
          new PixelBuffer<>(
              width, height, IntBuffer.wrap(pixels), PixelFormat.getIntArgbPreInstance()));
    }
  }
}

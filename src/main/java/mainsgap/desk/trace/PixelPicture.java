package mainsgap.desk.trace;

import java.nio.IntBuffer;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/** A picture whose pixels are painted by us, as fine as the screen is. For the UI thread. */
final class PixelPicture {
  private final ImageView node = new ImageView();
  private int[] pixels = new int[1];
  private PixelBuffer<IntBuffer> buffer = bufferOf(pixels, 1, 1);
  private ScenePainter painter = new ScenePainter(new Raster(pixels, 1, 1));

  PixelPicture() {
    node.setManaged(false);
    node.setMouseTransparent(true);
    node.setSmooth(false);
    node.setImage(new WritableImage(buffer));
  }

  ImageView node() {
    return node;
  }

  /** Makes it so large; {@code width} and {@code height} are those of the screen's pixels. */
  void resize(int width, int height, double pixelsOfUsual) {
    if (buffer.getWidth() != width || buffer.getHeight() != height) {
      pixels = new int[width * height];
      buffer = bufferOf(pixels, width, height);
      painter = new ScenePainter(new Raster(pixels, width, height));
      node.setImage(new WritableImage(buffer));
    }
    node.setFitWidth(width / pixelsOfUsual);
    node.setFitHeight(height / pixelsOfUsual);
  }

  void paint(TraceScene scene, PlotFrame frame, Grid grid, Palette palette, double pixelsOfUsual) {
    painter.paint(scene, frame, grid, palette, pixelsOfUsual);
    buffer.updateBuffer(whole -> null);
  }

  private static PixelBuffer<IntBuffer> bufferOf(int[] pixels, int width, int height) {
    return new PixelBuffer<>(
        width, height, IntBuffer.wrap(pixels), PixelFormat.getIntArgbPreInstance());
  }
}

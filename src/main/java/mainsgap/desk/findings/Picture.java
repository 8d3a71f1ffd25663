package mainsgap.desk.findings;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.IntBuffer;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import mainsgap.report.Figure;
import mainsgap.report.FigurePixels;
import mainsgap.report.FigureSheet;

/**
 * A figure as it is seen.
 *
 * @param words what it shows, for who hears it read out
 * @param image its pixels
 */
record Picture(String words, Image image) {

  /** Draws {@code figure}, on any thread. */
  static Picture of(Figure figure, FigureSheet sheet) {
    BufferedImage drawn = FigurePixels.image(figure, sheet);
    int[] pixels = ((DataBufferInt) drawn.getRaster().getDataBuffer()).getData();
    Image image =
        new WritableImage(
            new PixelBuffer<>(
                sheet.widthPixels(),
                sheet.heightPixels(),
                IntBuffer.wrap(pixels),
                PixelFormat.getIntArgbPreInstance()));
    return new Picture(figure.title(), image);
  }
}

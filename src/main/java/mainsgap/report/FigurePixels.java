package mainsgap.report;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** A figure as pixels. */
public final class FigurePixels {
  private FigurePixels() {}

  /** The figure as an image of the sheet's size, opaque, of the type INT_ARGB_PRE. */
  public static BufferedImage image(Figure figure, FigureSheet sheet) {
    return drawn(figure, sheet, BufferedImage.TYPE_INT_ARGB_PRE);
  }

  static byte[] png(Figure figure, FigureSheet sheet) {
    BufferedImage image = drawn(figure, sheet, BufferedImage.TYPE_INT_RGB);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      if (!ImageIO.write(image, "png", bytes)) {
        throw new AssertionError("every Java machine writes PNG");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static BufferedImage drawn(Figure figure, FigureSheet sheet, int type) {
    BufferedImage image = new BufferedImage(sheet.widthPixels(), sheet.heightPixels(), type);
    Graphics2D g = image.createGraphics();
    try {
      figure.draw(g, sheet);
    } finally {
      g.dispose();
    }
    return image;
  }
}

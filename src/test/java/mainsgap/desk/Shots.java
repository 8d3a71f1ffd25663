package mainsgap.desk;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.Scene;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;
import javax.imageio.ImageIO;

/** Pictures of the window for people to look at, in {@code target/screenshots}. */
public final class Shots {
  /** Where they are written. */
  public static final Path FOLDER = Path.of("target", "screenshots");

  private Shots() {}

  /** Writes what {@code scene} shows now; for any thread but the toolkit's. */
  public static Path save(Scene scene, String name) {
    return save(DeskToolkit.onFx(() -> scene.snapshot(null)), name);
  }

  /** Writes {@code image}. */
  public static Path save(Image image, String name) {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    int[] pixels = new int[width * height];
    image
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
    BufferedImage copy = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    copy.setRGB(0, 0, width, height, pixels, 0, width);
    Path file = FOLDER.resolve(name + ".png");
    try {
      Files.createDirectories(FOLDER);
      boolean unused = ImageIO.write(copy, "png", file.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return file;
  }
}

package mainsgap.desk.trace;

import java.util.Arrays;

/** Opaque pixels, row after row from the top, each 0xAARRGGBB; owned by who made them. */
final class Raster {
  /** Covers a pixel whole. */
  static final int WHOLE = 256;

  private static final int RED_AND_BLUE = 0x00FF00FF;
  private static final int GREEN = 0x0000FF00;
  private static final int OPAQUE = 0xFF000000;

  private final int[] pixels;
  private final int width;
  private final int height;

  @SuppressWarnings("ArrayIsStoredDirectly") // drawn into: that is what it is for
  Raster(int[] pixels, int width, int height) {
    if (pixels.length != width * height) {
      throw new IllegalArgumentException(
          pixels.length + " pixels are no picture of " + width + " x " + height);
    }
    this.pixels = pixels;
    this.width = width;
    this.height = height;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  int at(int x, int y) {
    return pixels[y * width + x];
  }

  void fill(int argb) {
    Arrays.fill(pixels, argb | OPAQUE);
  }

  /** Lays a colour over a pixel that lies within; {@code cover} is 0 to {@link #WHOLE}. */
  void cover(int x, int y, int argb, int cover) {
    int at = y * width + x;
    pixels[at] = cover >= WHOLE ? argb | OPAQUE : mixed(pixels[at], argb, cover);
  }

  /**
   * Lays a colour over {@code count} pixels of a row, each by its own cover from {@code from} on.
   */
  void coverRow(int x, int y, int argb, short[] covers, int from, int count) {
    int at = y * width + x;
    for (int i = 0; i < count; i++) {
      int cover = covers[from + i];
      if (cover > 0) {
        pixels[at + i] = cover >= WHOLE ? argb | OPAQUE : mixed(pixels[at + i], argb, cover);
      }
    }
  }

  /** Lays a colour over all pixels from one corner to another, which lies outside; cut to fit. */
  void rectangle(int left, int top, int right, int bottom, int argb, int cover) {
    int from = Math.max(0, left);
    int to = Math.min(width, right);
    for (int y = Math.max(0, top); y < Math.min(height, bottom); y++) {
      for (int x = from; x < to; x++) {
        cover(x, y, argb, cover);
      }
    }
  }

  private static int mixed(int under, int over, int cover) {
    int rest = WHOLE - cover;
    int redAndBlue = (under & RED_AND_BLUE) * rest + (over & RED_AND_BLUE) * cover;
    int green = (under & GREEN) * rest + (over & GREEN) * cover;
    return OPAQUE | (redAndBlue >>> 8 & RED_AND_BLUE) | (green >>> 8 & GREEN);
  }
}

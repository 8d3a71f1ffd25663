package mainsgap.desk.trace;

import java.util.Arrays;

/**
 * Draws outlines into a raster with a square nib. A pixel gets its colour by the share of it that
 * the nib covers, so that edges are smooth. Keeps its working arrays from line to line: for one
 * thread.
 */
final class Pen {
  private static final float SHARE_OF_STRIP = 1f / Outline.PER_PIXEL;

  private final Raster raster;
  private final float[] nibTop;
  private final float[] nibBottom;

  /** What is covered in each pixel of a column, less what is covered in the one above it. */
  private final float[] change;

  Pen(Raster raster) {
    this.raster = raster;
    nibTop = new float[raster.width() * Outline.PER_PIXEL];
    nibBottom = new float[raster.width() * Outline.PER_PIXEL];
    change = new float[raster.height() + 2];
  }

  /** Draws an outline that is as wide as the raster, at {@code topPixels} and below it. */
  void draw(Outline outline, int topPixels, double nibPixels, int argb) {
    spread(outline, nibPixels);
    for (int x = 0; x < raster.width(); x++) {
      drawColumn(x, topPixels, argb);
    }
  }

  /** What the nib covers in each strip: also where its middle is in one beside it. */
  private void spread(Outline outline, double nibPixels) {
    int reach = (int) Math.round((nibPixels * Outline.PER_PIXEL - 1) / 2);
    float half = (float) (nibPixels / 2);
    Arrays.fill(nibTop, Float.POSITIVE_INFINITY);
    Arrays.fill(nibBottom, Float.NEGATIVE_INFINITY);
    for (int strip = 0; strip < outline.length(); strip++) {
      float top = outline.top(strip) - half;
      float bottom = outline.bottom(strip) + half;
      int end = Math.min(outline.length(), strip + reach + 1);
      for (int i = Math.max(0, strip - reach); i < end; i++) {
        if (top < nibTop[i]) {
          nibTop[i] = top;
        }
        if (bottom > nibBottom[i]) {
          nibBottom[i] = bottom;
        }
      }
    }
  }

  private void drawColumn(int x, int topPixels, int argb) {
    int first = raster.height();
    int end = 0;
    for (int strip = x * Outline.PER_PIXEL; strip < (x + 1) * Outline.PER_PIXEL; strip++) {
      float top = Math.max(topPixels, nibTop[strip]);
      float bottom = Math.min(raster.height(), nibBottom[strip]);
      if (top < bottom) {
        addChange(top, SHARE_OF_STRIP);
        addChange(bottom, -SHARE_OF_STRIP);
        first = Math.min(first, (int) top);
        end = Math.max(end, (int) Math.ceil(bottom));
      }
    }
    float covered = 0;
    for (int y = first; y < end; y++) {
      covered += change[y];
      change[y] = 0;
      int cover = Math.round(covered * Raster.WHOLE);
      if (cover > 0) {
        raster.cover(x, y, argb, cover);
      }
    }
    if (first < end) {
      change[end] = 0;
      change[end + 1] = 0;
    }
  }

  /** From {@code y} down, so much more is covered; of the pixel that holds it, a part. */
  private void addChange(float y, float share) {
    int pixel = (int) y;
    float above = y - pixel;
    change[pixel] += share * (1 - above);
    change[pixel + 1] += share * above;
  }
}

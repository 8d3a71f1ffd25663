package mainsgap.desk.trace;

import java.util.Arrays;

/**
 * Draws outlines into a raster with a square nib. A pixel gets its colour by the share of it that
 * the nib covers, so that edges are smooth. Keeps its working arrays from line to line: for one
 * thread.
 */
final class Pen {
  private static final float SHARE_OF_STRIP = 1f / Outline.PER_PIXEL;

  /** As many as share a line of the processor's cache. */
  private static final int COLUMNS = 16;

  /** From this share of their pixels on, columns are drawn row by row. */
  private static final double LEAST_SHARE_FOR_ROWS = 0.3;

  private static final float ROUNDING = 0.5f / Raster.WHOLE;

  private final Raster raster;
  private final int[] firsts = new int[COLUMNS];
  private final int[] ends = new int[COLUMNS];
  private final float[] nibTop;
  private final float[] nibBottom;

  /** How much is covered of each pixel of some columns, row after row; 0 between two drawings. */
  private final short[] covers;

  /** What is covered in each pixel of a column, less what is covered in the one above it. */
  private final float[] change;

  Pen(Raster raster) {
    this.raster = raster;
    nibTop = new float[raster.width() * Outline.PER_PIXEL];
    nibBottom = new float[raster.width() * Outline.PER_PIXEL];
    change = new float[raster.height() + 2];
    covers = new short[raster.height() * COLUMNS];
  }

  /** Draws an outline that is as wide as the raster, at {@code topPixels} and below it. */
  void draw(Outline outline, int topPixels, double nibPixels, int argb) {
    spread(outline, nibPixels);
    for (int x = 0; x < raster.width(); x += COLUMNS) {
      drawColumns(x, Math.min(COLUMNS, raster.width() - x), topPixels, argb);
    }
  }

  /**
   * Where the line fills much of some columns, what is covered is laid on row by row: neighbours in
   * a row lie beside each other in memory, those in a column each on a page of its own.
   */
  private void drawColumns(int fromX, int columns, int topPixels, int argb) {
    int first = raster.height();
    int end = 0;
    int inside = 0;
    for (int column = 0; column < columns; column++) {
      firsts[column] = firstCovered(fromX + column, topPixels);
      ends[column] = endOfCovered(fromX + column, topPixels);
      if (firsts[column] < ends[column]) {
        first = Math.min(first, firsts[column]);
        end = Math.max(end, ends[column]);
        inside += ends[column] - firsts[column];
      }
    }
    if (inside == 0) {
      return;
    }
    if (inside > LEAST_SHARE_FOR_ROWS * (end - first) * columns) {
      drawByRows(fromX, columns, first, end, topPixels, argb);
    } else {
      drawByColumns(fromX, columns, topPixels, argb);
    }
  }

  private void drawByColumns(int fromX, int columns, int topPixels, int argb) {
    for (int column = 0; column < columns; column++) {
      int x = fromX + column;
      findChanges(x, topPixels);
      float covered = ROUNDING;
      for (int y = firsts[column]; y < ends[column]; y++) {
        covered += change[y];
        change[y] = 0;
        int cover = (int) (covered * Raster.WHOLE);
        if (cover > 0) {
          raster.cover(x, y, argb, cover);
        }
      }
      endChanges(column);
    }
  }

  private void drawByRows(int fromX, int columns, int first, int end, int topPixels, int argb) {
    for (int column = 0; column < columns; column++) {
      findChanges(fromX + column, topPixels);
      float covered = ROUNDING;
      for (int y = firsts[column]; y < ends[column]; y++) {
        covered += change[y];
        change[y] = 0;
        covers[y * COLUMNS + column] = (short) (covered * Raster.WHOLE);
      }
      endChanges(column);
    }
    for (int y = first; y < end; y++) {
      raster.coverRow(fromX, y, argb, covers, y * COLUMNS, columns);
    }
    Arrays.fill(covers, first * COLUMNS, end * COLUMNS, (short) 0);
  }

  private int firstCovered(int x, int topPixels) {
    float top = raster.height();
    for (int strip = x * Outline.PER_PIXEL; strip < (x + 1) * Outline.PER_PIXEL; strip++) {
      top = Math.min(top, nibTop[strip]);
    }
    return (int) Math.max(topPixels, top);
  }

  private int endOfCovered(int x, int topPixels) {
    float bottom = topPixels;
    for (int strip = x * Outline.PER_PIXEL; strip < (x + 1) * Outline.PER_PIXEL; strip++) {
      bottom = Math.max(bottom, nibBottom[strip]);
    }
    return (int) Math.ceil(Math.min(raster.height(), bottom));
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

  private void findChanges(int x, int topPixels) {
    for (int strip = x * Outline.PER_PIXEL; strip < (x + 1) * Outline.PER_PIXEL; strip++) {
      float top = Math.max(topPixels, nibTop[strip]);
      float bottom = Math.min(raster.height(), nibBottom[strip]);
      if (top < bottom) {
        addChange(top, SHARE_OF_STRIP);
        addChange(bottom, -SHARE_OF_STRIP);
      }
    }
  }

  /** Whatever rounding left beyond the last pixel. */
  private void endChanges(int column) {
    if (firsts[column] < ends[column]) {
      change[ends[column]] = 0;
      change[ends[column] + 1] = 0;
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

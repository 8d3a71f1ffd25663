package mainsgap.desk.trace;

/** A small shape on a trace, by which it is told from the others without its colour. */
enum Mark {
  CIRCLE,
  SQUARE,
  TRIANGLE,
  DIAMOND,
  CROSS,
  TRIANGLE_POINTING_DOWN;

  /** Flat sides of a triangle that is 1.6 high and 2 wide. */
  private static final double WIDENING = 1 / 1.6;

  /** The mark of the trace with this number, counted from 0. */
  static Mark ofTrace(int number) {
    return values()[number % values().length];
  }

  /**
   * Draws it with a rim of the ground about it, its middle at {@code x}, {@code y}.
   *
   * @param radius in pixels
   */
  void draw(Raster raster, double x, double y, double radius, int argb, int ground) {
    double rim = radius * 0.35;
    int left = (int) Math.max(0, Math.floor(x - radius - rim - 1));
    int right = (int) Math.min(raster.width(), Math.ceil(x + radius + rim + 1));
    int top = (int) Math.max(0, Math.floor(y - radius - rim - 1));
    int bottom = (int) Math.min(raster.height(), Math.ceil(y + radius + rim + 1));
    for (int row = top; row < bottom; row++) {
      for (int column = left; column < right; column++) {
        double outside = outside(column + 0.5 - x, row + 0.5 - y, radius);
        cover(raster, column, row, ground, outside - rim);
        cover(raster, column, row, argb, outside);
      }
    }
  }

  private static void cover(Raster raster, int x, int y, int argb, double outside) {
    int cover = (int) Math.round(Raster.WHOLE * Math.max(0, Math.min(1, 0.5 - outside)));
    if (cover > 0) {
      raster.cover(x, y, argb, cover);
    }
  }

  /** How far a point lies outside its edge; below 0 inside. */
  private double outside(double dx, double dy, double radius) {
    double across = Math.abs(dx);
    double along = Math.abs(dy);
    return switch (this) {
      case CIRCLE -> Math.hypot(dx, dy) - 0.95 * radius;
      case SQUARE -> Math.max(across, along) - 0.85 * radius;
      case TRIANGLE -> outsideTriangle(across, dy, radius);
      case TRIANGLE_POINTING_DOWN -> outsideTriangle(across, -dy, radius);
      case DIAMOND -> (across + along - 1.15 * radius) / Math.sqrt(2);
      case CROSS ->
          Math.max(
              Math.abs(across - along) / Math.sqrt(2) - 0.32 * radius,
              (across + along) / Math.sqrt(2) - 1.05 * radius);
    };
  }

  private static double outsideTriangle(double across, double down, double radius) {
    double flank = (across - WIDENING * (down + radius)) / Math.hypot(1, WIDENING);
    return Math.max(down - 0.6 * radius, flank);
  }
}

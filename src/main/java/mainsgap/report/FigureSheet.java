package mainsgap.report;

/**
 * What a figure is drawn on.
 *
 * @param widthPixels at least 320
 * @param heightPixels at least 200
 * @param textPixels the height of the smallest text, from 6 to a tenth of the height
 * @param look its colours
 */
public record FigureSheet(int widthPixels, int heightPixels, double textPixels, FigureLook look) {
  /** The least that a figure can be told on. */
  public static final int LEAST_WIDTH_PIXELS = 320;

  /** The least that a figure can be told on. */
  public static final int LEAST_HEIGHT_PIXELS = 200;

  /** The most that is drawn: twice 4K each way. */
  public static final int MOST_PIXELS = 7680;

  private static final double LEAST_TEXT_PIXELS = 6;

  /**
   * At 1920 x 1080 the smallest text of a video is 28 pixels high (own choice, read on a phone).
   */
  private static final double VIDEO_TEXT_PIXELS = 28;

  private static final double VIDEO_WIDTH_PIXELS = 1920;
  private static final double VIDEO_HEIGHT_PIXELS = 1080;

  /** Checks that a figure can be drawn on it. */
  public FigureSheet {
    if (widthPixels < LEAST_WIDTH_PIXELS
        || heightPixels < LEAST_HEIGHT_PIXELS
        || widthPixels > MOST_PIXELS
        || heightPixels > MOST_PIXELS) {
      throw new ReportException(
          "a figure of "
              + widthPixels
              + " x "
              + heightPixels
              + " pixels cannot be drawn: choose "
              + LEAST_WIDTH_PIXELS
              + " x "
              + LEAST_HEIGHT_PIXELS
              + " to "
              + MOST_PIXELS
              + " x "
              + MOST_PIXELS);
    }
    if (!(textPixels >= LEAST_TEXT_PIXELS && textPixels <= heightPixels / 10.0)) {
      throw new ReportException(
          "a text of "
              + textPixels
              + " pixels does not suit a figure of "
              + heightPixels
              + " pixels height: choose "
              + LEAST_TEXT_PIXELS
              + " to "
              + heightPixels / 10.0);
    }
  }

  /** A sheet whose text is large enough for video, whatever the size. */
  public static FigureSheet forVideo(int widthPixels, int heightPixels, FigureLook look) {
    return forVideo(widthPixels, heightPixels, 1, look);
  }

  /** The same with all text larger or smaller by {@code textFactor}. */
  public static FigureSheet forVideo(
      int widthPixels, int heightPixels, double textFactor, FigureLook look) {
    return new FigureSheet(
        widthPixels,
        heightPixels,
        Math.max(LEAST_TEXT_PIXELS, videoTextPixels(widthPixels, heightPixels) * textFactor),
        look);
  }

  /** The height of the smallest text that can be read in a video of this size. */
  public static double videoTextPixels(int widthPixels, int heightPixels) {
    return VIDEO_TEXT_PIXELS
        * Math.min(widthPixels / VIDEO_WIDTH_PIXELS, heightPixels / VIDEO_HEIGHT_PIXELS);
  }
}

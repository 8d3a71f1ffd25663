package mainsgap.desk.findings;

/** Sizes that pictures are often asked in, by shape and use. */
enum PictureSize {
  FULL_HD("1920 × 1080, video", 1920, 1080),
  FOUR_K("3840 × 2160, video in 4K", 3840, 2160),
  UPRIGHT("1080 × 1920, upright video", 1080, 1920),
  SQUARE("1080 × 1080, square", 1080, 1080),
  OWN("own size", 0, 0);

  private final String words;
  private final int widthPixels;
  private final int heightPixels;

  PictureSize(String words, int widthPixels, int heightPixels) {
    this.words = words;
    this.widthPixels = widthPixels;
    this.heightPixels = heightPixels;
  }

  String words() {
    return words;
  }

  int widthPixels() {
    return widthPixels;
  }

  int heightPixels() {
    return heightPixels;
  }
}

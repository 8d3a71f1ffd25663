package mainsgap.desk.trace;

/**
 * The declared time, as a ruler from the zero of the picture on.
 *
 * @param lengthSeconds the declared time, above 0
 * @param guardSeconds half-width of the band about its end in which nothing can be judged; 0 for
 *     none
 * @param label such as "declared: at most 10 ms"
 */
public record Ruler(double lengthSeconds, double guardSeconds, String label) {

  /** Checks both. */
  public Ruler {
    if (!(lengthSeconds > 0) || !(guardSeconds >= 0)) {
      throw new IllegalArgumentException(
          "a ruler is longer than 0 s and its guard band not below 0 s, found "
              + lengthSeconds
              + " s and "
              + guardSeconds
              + " s");
    }
  }
}

package mainsgap.simulation;

import java.util.SplittableRandom;

/**
 * The edges of a contact that moves once and bounces: the first is the movement itself, then they
 * alternate. The count is odd, so that the last edge is of the first one's kind. Immutable.
 */
final class ContactEdges {
  private final double[] seconds;

  private ContactEdges(double[] seconds) {
    this.seconds = seconds;
  }

  /** A contact that moves cleanly. */
  static ContactEdges clean(double seconds) {
    return new ContactEdges(new double[] {seconds});
  }

  /**
   * A contact that bounces {@code bounces} times, each time for two stretches of 0.25 to 1 times
   * {@code longestSeconds}.
   */
  static ContactEdges bouncing(
      double startSeconds, int bounces, double longestSeconds, SplittableRandom random) {
    double[] seconds = new double[1 + 2 * bounces];
    seconds[0] = startSeconds;
    for (int i = 1; i < seconds.length; i++) {
      seconds[i] = seconds[i - 1] + longestSeconds * random.nextDouble(0.25, 1);
    }
    return new ContactEdges(seconds);
  }

  double first() {
    return seconds[0];
  }

  double last() {
    return seconds[seconds.length - 1];
  }

  int count() {
    return seconds.length;
  }

  double at(int index) {
    return seconds[index];
  }

  /** Whether edge {@code index} is of the kind of the first one. */
  static boolean isLikeFirst(int index) {
    return index % 2 == 0;
  }
}

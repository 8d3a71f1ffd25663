package mainsgap.arming;

import java.time.Duration;
import java.util.Locale;

/** Words for times, counts and faults. */
final class Sentences {
  private Sentences() {}

  static Duration seconds(double seconds) {
    return Duration.ofNanos(Math.round(seconds * 1e9));
  }

  static String of(Duration duration) {
    double seconds = duration.toNanos() / 1e9;
    return seconds == Math.rint(seconds)
        ? String.format(Locale.ROOT, "%.0f s", seconds)
        : String.format(Locale.ROOT, "%.3g s", seconds);
  }

  static String measured(int trials) {
    return trials == 1 ? "1 trial measured" : trials + " trials measured";
  }

  /** The sentence of a fault and of what failed after it. */
  static String of(RuntimeException fault) {
    StringBuilder text = new StringBuilder(String.valueOf(fault.getMessage()));
    for (Throwable later : fault.getSuppressed()) {
      text.append("; and then: ").append(later.getMessage());
    }
    return text.toString();
  }
}

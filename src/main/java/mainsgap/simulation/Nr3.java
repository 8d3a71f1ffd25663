package mainsgap.simulation;

import java.util.Locale;

/** Numbers in the form NR3 of IEEE 488.2. */
final class Nr3 {
  private Nr3() {}

  static String of(double number) {
    return String.format(Locale.ROOT, "%.9E", number);
  }
}

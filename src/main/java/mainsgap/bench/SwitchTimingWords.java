package mainsgap.bench;

import java.util.stream.Collectors;
import mainsgap.arming.SwitchTiming;

/** Words for where on the wave a commanded switch opens. */
final class SwitchTimingWords {
  private SwitchTimingWords() {}

  static String of(SwitchTiming timing) {
    if (!timing.anglesDegrees().isEmpty()) {
      return "opens at "
          + timing.anglesDegrees().stream().map(Words::plain).collect(Collectors.joining(", "))
          + " degrees in turn";
    }
    if (timing.randomCycles() == 0) {
      return "opens as soon as the instrument is armed";
    }
    return "opens after a random delay, even over "
        + (timing.randomCycles() == 1 ? "one cycle" : timing.randomCycles() + " cycles")
        + " of the mains, seed "
        + timing.seed();
  }
}

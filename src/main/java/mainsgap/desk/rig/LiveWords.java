package mainsgap.desk.rig;

import java.util.List;
import java.util.Locale;
import mainsgap.arming.LiveSignal;
import mainsgap.arming.RigComplaint;
import mainsgap.bench.RigCheckEnd.Seen;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/** What a check saw at each part, in a few words. */
final class LiveWords {
  private LiveWords() {}

  static String of(Part part, Seen seen) {
    return switch (part) {
      case WALL, UNIT, LOAD -> "";
      case SWITCH -> mains(seen);
      case SCOPE -> seen.method() + "; blind zone: " + seen.blindZone();
      case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP, CURRENT_CLAMP ->
          part.role().map(role -> signal(role, seen.signals().get(role))).orElse("");
    };
  }

  /** What has to be mended at the clip. */
  static List<RigComplaint> complaintsAbout(Part part, Seen seen) {
    return seen.complaints().stream()
        .filter(
            one -> one.kind().mustBeMended() && part.role().filter(one.role()::equals).isPresent())
        .toList();
  }

  private static String mains(Seen seen) {
    return switch (seen.mains()) {
      case PRESENT -> "mains is on";
      case POOR -> "mains is there, but too low";
      case ABSENT -> "no mains voltage is seen";
      case UNKNOWN -> "mains is not watched";
    };
  }

  private static String signal(ChannelRole role, @Nullable LiveSignal signal) {
    if (signal == null) {
      return "";
    }
    String effective =
        role == ChannelRole.LOAD_CURRENT
            ? String.format(Locale.ROOT, "%.3f A", signal.rmsVolts())
            : String.format(Locale.ROOT, "%.1f V", signal.rmsVolts());
    Double hertz = signal.frequencyHertz();
    return hertz == null
        ? effective + " RMS"
        : effective + String.format(Locale.ROOT, " RMS, %.2f Hz", hertz);
  }
}

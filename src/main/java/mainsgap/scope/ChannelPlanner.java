package mainsgap.scope;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.signal.ChannelRole;

/** Chooses the range of each channel, and says why. */
final class ChannelPlanner {
  /** An inverter's overshoot stays inside the range. */
  static final double HEADROOM = 1.5;

  private final CaptureRequest request;
  private final ScopeLimits limits;
  private final List<String> explanation = new ArrayList<>();

  ChannelPlanner(CaptureRequest request, ScopeLimits limits) {
    this.request = request;
    this.limits = limits;
  }

  /** One sentence for each channel that was planned. */
  List<String> explanation() {
    return List.copyOf(explanation);
  }

  /** The channel for each role that is watched. */
  Map<ChannelRole, ChannelPlan> channels() {
    Map<ChannelRole, ChannelPlan> channels = new EnumMap<>(ChannelRole.class);
    Map<Integer, ChannelRole> taken = new HashMap<>();
    request
        .inputs()
        .forEach(
            (role, input) -> {
              ChannelRole other = taken.putIfAbsent(input.channel(), role);
              if (other != null) {
                throw new ScopeException(
                    "channel "
                        + input.channel()
                        + " is both "
                        + other.words()
                        + " and "
                        + role.words()
                        + ": give each its own channel");
              }
              channels.put(role, channel(role, input));
            });
    return channels;
  }

  private ChannelPlan channel(ChannelRole role, CaptureRequest.Input input) {
    if (input.channel() > limits.channels()) {
      throw new ScopeException(
          role.words()
              + " is on channel "
              + input.channel()
              + ", but the instrument has "
              + limits.channels()
              + " channels: choose one of them");
    }
    double peak = expectedPeakVolts(role, input);
    double largest = limits.largestFullScalePeakVolts() * input.probeFactor();
    double smallest = limits.smallestFullScalePeakVolts() * input.probeFactor();
    double fullScale =
        Math.max(smallest, Math.min(largest, RoundValues.upTwoDigits(HEADROOM * peak)));
    if (fullScale < HEADROOM * peak) {
      throw new ScopeException(tooSmall(input, peak, largest));
    }
    explanation.add(
        String.format(
            Locale.ROOT,
            "Channel %d (%s, probe factor %s): range ±%s, at least %s times the %s peak, so that an"
                + " overshoot is seen.",
            input.channel(),
            role.words(),
            Words.plain(input.probeFactor(), 4),
            reach(role, fullScale),
            Words.plain(HEADROOM, 2),
            reach(role, peak)));
    return new ChannelPlan(input.channel(), input.probeFactor(), fullScale, peak);
  }

  /** A load current is in amperes at the clamp. */
  private static String reach(ChannelRole role, double value) {
    return role == ChannelRole.LOAD_CURRENT ? Words.plain(value, 3) + " A" : Words.volts(value);
  }

  private double expectedPeakVolts(ChannelRole role, CaptureRequest.Input input) {
    Double expected = input.expectedPeakVolts();
    if (expected != null) {
      return expected;
    }
    EventSignal marker = request.marker();
    if (role == ChannelRole.MARKER && marker != null) {
      return marker.peakVolts();
    }
    if (role == ChannelRole.LOAD_CURRENT || role == ChannelRole.MARKER) {
      throw new ScopeException(
          "channel "
              + input.channel()
              + " ("
              + role.words()
              + ") does not see the supply: say which peak voltage it sees");
    }
    return request.nominalPeakVolts();
  }

  private String tooSmall(CaptureRequest.Input input, double peak, double largest) {
    double factor = RoundValues.upTwoDigits(HEADROOM * peak / limits.largestFullScalePeakVolts());
    return "channel "
        + input.channel()
        + " reaches ±"
        + Words.volts(largest)
        + " with a probe factor of "
        + Words.plain(input.probeFactor(), 4)
        + ", below "
        + Words.plain(HEADROOM, 2)
        + " times the "
        + Words.volts(peak)
        + " peak: use a probe rated for this voltage with a factor of "
        + Words.plain(factor, 4)
        + " or more";
  }
}

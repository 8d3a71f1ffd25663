package mainsgap.scope;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * What is to be caught, from which a {@link CapturePlan} is made.
 *
 * @param event the change of supply that the record should hold
 * @param nominalVolts the nominal RMS voltage, above 0
 * @param nominalFrequencyHertz 40 to 70
 * @param ratedSeconds the declared transfer time; null where none is declared
 * @param inputs the channel for each role that is watched, the output always among them
 * @param switchedByHand whether a person moves the mains switch, who needs seconds to do so
 * @param wishedMethod how to catch the event; null leaves the choice to the planner
 * @param marker what the marker channel sees; null where there is none
 * @param external what is at the external trigger input; null where nothing is
 * @param longestCheckSeconds how long the unit may check a mains that is back before it goes back
 *     to it
 */
public record CaptureRequest(
    Event event,
    double nominalVolts,
    double nominalFrequencyHertz,
    @Nullable Double ratedSeconds,
    Map<ChannelRole, Input> inputs,
    boolean switchedByHand,
    @Nullable CatchMethod wishedMethod,
    @Nullable EventSignal marker,
    @Nullable EventSignal external,
    double longestCheckSeconds) {

  /** Units check a mains that is back for 15 s to 5 minutes (common practice). */
  public static final double LONGEST_CHECK_SECONDS = 300;

  private static final double LONGEST_ALLOWED_CHECK_SECONDS = 3600;

  /** One without signals beside the channels, on a unit of which nothing is known. */
  public CaptureRequest(
      Event event,
      double nominalVolts,
      double nominalFrequencyHertz,
      @Nullable Double ratedSeconds,
      Map<ChannelRole, Input> inputs,
      boolean switchedByHand,
      @Nullable CatchMethod wishedMethod) {
    this(
        event,
        nominalVolts,
        nominalFrequencyHertz,
        ratedSeconds,
        inputs,
        switchedByHand,
        wishedMethod,
        null,
        null,
        LONGEST_CHECK_SECONDS);
  }

  /**
   * Where a role is connected.
   *
   * @param channel the instrument's channel, from 1
   * @param probeFactor volts at the tip for each volt at the input, such as 100
   * @param expectedPeakVolts what the channel sees at most, in volts at the tip; null for the peak
   *     of the nominal supply
   */
  public record Input(int channel, double probeFactor, @Nullable Double expectedPeakVolts) {

    /** Checks the numbers. */
    public Input {
      if (channel < 1) {
        throw new IllegalArgumentException("channels count from 1, found " + channel);
      }
      if (!(probeFactor > 0) || Double.isInfinite(probeFactor)) {
        throw new IllegalArgumentException("a probe factor is above 0, found " + probeFactor);
      }
      if (expectedPeakVolts != null
          && (!(expectedPeakVolts > 0) || Double.isInfinite(expectedPeakVolts))) {
        throw new IllegalArgumentException(
            "an expected peak is above 0 V, found " + expectedPeakVolts + " V");
      }
    }

    /** A channel that sees the nominal supply. */
    public static Input ofSupply(int channel, double probeFactor) {
      return new Input(channel, probeFactor, null);
    }
  }

  /** Checks the nominal values and takes its own copy. */
  public CaptureRequest {
    if (!(nominalVolts > 0) || Double.isInfinite(nominalVolts)) {
      throw new IllegalArgumentException(
          "the nominal voltage is above 0 V RMS, found " + nominalVolts + " V");
    }
    if (!(nominalFrequencyHertz >= 40 && nominalFrequencyHertz <= 70)) {
      throw new IllegalArgumentException(
          "the nominal frequency is 40 to 70 Hz, found " + nominalFrequencyHertz + " Hz");
    }
    if (ratedSeconds != null && (!(ratedSeconds >= 0) || Double.isInfinite(ratedSeconds))) {
      throw new IllegalArgumentException(
          "a declared transfer time is at least 0 s, found " + ratedSeconds + " s");
    }
    EnumMap<ChannelRole, Input> copy = new EnumMap<>(ChannelRole.class);
    copy.putAll(inputs);
    if (!copy.containsKey(ChannelRole.OUTPUT)) {
      throw new IllegalArgumentException(
          "a capture needs the output channel, found " + copy.keySet());
    }
    if (copy.containsKey(ChannelRole.MARKER) != (marker != null)) {
      throw new IllegalArgumentException(
          "a marker channel and what it sees go together, found " + copy.keySet() + ", " + marker);
    }
    if (!(longestCheckSeconds >= 0 && longestCheckSeconds <= LONGEST_ALLOWED_CHECK_SECONDS)) {
      throw new IllegalArgumentException(
          "a unit checks mains for 0 to 3600 s before it goes back, found "
              + longestCheckSeconds
              + " s");
    }
    inputs = Collections.unmodifiableMap(copy);
  }

  /** The nominal peak voltage: RMS times the square root of two. */
  double nominalPeakVolts() {
    return nominalVolts * Math.sqrt(2);
  }

  /** One nominal cycle in seconds. */
  double cycleSeconds() {
    return 1 / nominalFrequencyHertz;
  }
}

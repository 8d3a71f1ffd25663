package mainsgap.simulation;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What is set on a simulated scope, whatever dialect sets it: ranges, record and trigger. The
 * instrument that owns it lets one message in at a time.
 */
final class ScopePanel {
  static final int CHANNELS = ScopeRecord.CHANNELS;
  static final int MOST_POINTS = 2_500_000;
  static final double LEVEL_REACH_VOLTS = 1e5;

  private static final double SMALLEST_SPAN_VOLTS = 0.008;
  private static final double LARGEST_SPAN_VOLTS = 160;

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final boolean probeFactorTold;

  private final double[] probeFactor = new double[CHANNELS];
  private final double[] spanVolts = new double[CHANNELS];
  private final double[] middleVolts = new double[CHANNELS];
  int triggerChannel;
  double levelVolts;
  double timeOutSeconds;
  boolean waitsForTimeOut;
  int points;
  double durationSeconds;

  /**
   * A panel as after power-on.
   *
   * @param probeFactorTold whether volts are at the probe tip; otherwise they are behind the probe
   */
  ScopePanel(ScopeCore core, FaultSwitch faults, boolean probeFactorTold) {
    this.core = core;
    this.faults = faults;
    this.probeFactorTold = probeFactorTold;
    setDefaults();
  }

  void setDefaults() {
    Arrays.fill(probeFactor, 1);
    Arrays.fill(spanVolts, 8);
    Arrays.fill(middleVolts, 0);
    triggerChannel = 1;
    levelVolts = 0;
    timeOutSeconds = 0.02;
    waitsForTimeOut = false;
    points = 10_000;
    durationSeconds = 0.1;
  }

  /** Range and offset are volts at the tip: they follow the probe factor. */
  void setProbe(Call call) {
    int channel = call.suffix() - 1;
    double factor = call.number(0.01, 10_000);
    double ratio = factor / probeFactor[channel];
    probeFactor[channel] = factor;
    spanVolts[channel] *= ratio;
    middleVolts[channel] *= ratio;
  }

  double probeFactor(Call call) {
    return probeFactor[call.suffix() - 1];
  }

  /** Sets a range whose parameter has {@code divisions} of it. */
  void setSpan(Call call, int divisions) {
    int channel = call.suffix() - 1;
    double factor = probeFactor[channel] / divisions;
    double asked = call.number(SMALLEST_SPAN_VOLTS * factor, LARGEST_SPAN_VOLTS * factor);
    spanVolts[channel] = faults.spanOf(asked * divisions);
  }

  double spanVolts(int channel) {
    return spanVolts[channel - 1];
  }

  /** Sets the voltage of the middle; {@code sign} -1 where the offset shifts the trace instead. */
  void setMiddle(Call call, int sign) {
    int channel = call.suffix() - 1;
    double reach = 100 * probeFactor[channel];
    middleVolts[channel] = sign * call.number(-reach, reach);
  }

  double middleVolts(int channel) {
    return middleVolts[channel - 1];
  }

  double intervalSeconds() {
    return durationSeconds / points;
  }

  /** What the acquisition waits for: a time-out, or an edge that comes or is forced. */
  Trigger trigger() {
    return waitsForTimeOut
        ? new Trigger.TimeOut(triggerChannel, levelAtTip(), timeOutSeconds)
        : new Trigger.Edge(triggerChannel, levelAtTip(), true);
  }

  /** Starts a record whose first sample lies at {@code firstSampleSeconds} from the trigger. */
  void start(double firstSampleSeconds, @Nullable Trigger trigger) {
    faults.allowStart();
    core.arm(
        new RecordPlan(
            firstSampleSeconds,
            intervalSeconds(),
            points,
            trigger,
            IntStream.range(0, CHANNELS).mapToObj(this::range).toList()),
        faults.now());
  }

  /** Volts at the tip for each volt of the instrument. */
  double tipVoltsPerVolt() {
    return probeFactorTold ? 1 : SimulatedBench.PROBE_FACTOR;
  }

  private double levelAtTip() {
    return levelVolts * tipVoltsPerVolt();
  }

  private VoltageRange range(int channel) {
    return probeFactorTold
        ? VoltageRange.told(
            channel + 1, probeFactor[channel], middleVolts[channel], spanVolts[channel])
        : VoltageRange.atTip(
            middleVolts[channel] * tipVoltsPerVolt(), spanVolts[channel] * tipVoltsPerVolt());
  }
}

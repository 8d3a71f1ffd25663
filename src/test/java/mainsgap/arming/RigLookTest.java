package mainsgap.arming;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import mainsgap.arming.RigComplaint.Kind;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.scope.CatchMethod;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.MeasuringTask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigLookTest {
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private final RigLook rules = new RigLook(plan(), TASK);

  private static CapturePlan plan() {
    Map<ChannelRole, ChannelPlan> channels = new EnumMap<>(BenchFake.channels());
    channels.put(ChannelRole.LOAD_CURRENT, new ChannelPlan(4, 10, 7.5, 5));
    return new CapturePlan(CatchMethod.FORCED_RECORD, channels, 1e-5, 1000, 0, null, List.of());
  }

  @Test
  void everythingThatIsWrongIsSaidNotTheFirstThingAlone() {
    assertEquals(
        List.of(Kind.VOLTAGE, Kind.FREQUENCY, Kind.NO_SIGNAL, Kind.EXCHANGED),
        kinds(Signals.both(Signals.sine(120, 60), Signals.sine(0, 50))));
  }

  @Test
  void clippedWaveIsNotAlsoToldToHaveTheWrongVoltage() {
    assertEquals(List.of(Kind.CLIPPED), kinds(Signals.output(Signals.sine(375, 50))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "230 | 0   | EXCHANGED | mains is off, and the output shows 230 V RMS: it is live from",
        "0   | 230 | EXCHANGED | mains shows 230 V RMS and the output nothing: the unit is off, or",
        "230 | 230 | REMARK    | output and mains are the same wave: right where the unit passes",
        "230 | -230 | EXCHANGED | the output is mains upside down",
      })
  void outputAndMainsTellOfEachOther(double output, double mains, Kind kind, String sentence) {
    RigComplaint last =
        last(rules.complaints(Signals.both(Signals.sine(output, 50), Signals.sine(mains, 50))));

    assertEquals(kind, last.kind());
    assertTrue(last.sentence().startsWith(sentence), last.sentence());
    assertFalse(kind.mustBeMended());
  }

  /** A quarter of a cycle late: 50 samples of 0.1 ms. */
  @Test
  void unitThatRunsFreelyIsTakenToBeOnItsBattery() {
    double[] mains = Signals.sine(230, 50);
    double[] late = new double[mains.length];
    System.arraycopy(mains, 0, late, 50, mains.length - 50);
    System.arraycopy(mains, 150, late, 0, 50);

    assertEquals(Kind.OUT_OF_STEP, last(rules.complaints(Signals.both(late, mains))).kind());
  }

  @Test
  void loadThatDrawsNothingIsToBeConnected() {
    Capture look =
        new Capture(
            Signals.TIME,
            Map.of(
                ChannelRole.OUTPUT, Signals.waveform(Signals.sine(230, 50)),
                ChannelRole.LOAD_CURRENT, Signals.waveform(Signals.sine(0.01, 50))));

    RigComplaint only = last(rules.complaints(look));

    assertEquals(
        new RigComplaint(
            ChannelRole.LOAD_CURRENT,
            Kind.NO_LOAD,
            "channel 4 (load current) shows 0.010 A RMS of up to 5.00 A peak: no load. Connect at"
                + " least a small resistive load, and see that the clamp is around one conductor"
                + " alone"),
        only);
  }

  @Test
  void rangeWithoutRoomForAnOvershootIsTold() {
    byte[] block = Signals.waveform(Signals.sine(230, 50)).block();
    Waveform narrow =
        new Waveform(block, CodeFormat.REAL_64_LSB_FIRST, new Scale(0, 1, 0, -400, 400));

    RigComplaint only = last(rules.complaints(Capture.ofOutput(Signals.TIME, narrow)));

    assertEquals(Kind.RANGE, only.kind());
    assertTrue(
        only.sentence().startsWith("channel 1 (output) reaches 400 V, needed are 488 V"),
        only.sentence());
  }

  @Test
  void rightOutputAloneHasNothingToSay() {
    assertEquals(List.of(), rules.complaints(Signals.output(Signals.sine(230, 50))));
  }

  private List<Kind> kinds(Capture look) {
    return rules.complaints(look).stream().map(RigComplaint::kind).toList();
  }

  private static RigComplaint last(List<RigComplaint> complaints) {
    return complaints.get(complaints.size() - 1);
  }
}

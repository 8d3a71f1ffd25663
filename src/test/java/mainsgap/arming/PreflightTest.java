package mainsgap.arming;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import java.util.Optional;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CatchMethod;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.MeasuringTask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PreflightTest {
  private final Preflight preflight =
      new Preflight(
          new CapturePlan(
              CatchMethod.FORCED_RECORD, BenchFake.channels(), 1e-5, 1000, 0, null, List.of()),
          new MeasuringTask(Event.LOSS, 230, 50));

  @ParameterizedTest
  @CsvSource({"230, 50", "196, 50", "264, 50", "230, 47.1", "230, 52.9"})
  void liveSignalNearNominalIsRight(double rmsVolts, double hertz) {
    assertEquals(
        Optional.empty(),
        preflight.complaintAboutOutput(Signals.output(Signals.sine(rmsVolts, hertz))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0   | 50 | channel 1 (output) shows 0.0 V RMS where 230 V is nominal: no signal. Connect the"
            + " probe to the unit's output and switch the unit on; with no load connected, connect"
            + " at least a small resistive load",
        "120 | 50 | channel 1 (output) shows 120.0 V RMS, allowed 195.5 to 264.5 V around 230 V"
            + " nominal: is the probe factor of 100 right?",
        "300 | 50 | channel 1 (output) shows 300.0 V RMS, allowed 195.5 to 264.5 V around 230 V"
            + " nominal: is the probe factor of 100 right?",
        "230 | 60 | channel 1 (output) shows 60.00 Hz, allowed 47.0 to 53.0 Hz around 50 Hz nominal:"
            + " is the nominal frequency right?",
        "230 | 0  | channel 1 (output) shows 209.5 V RMS but no whole cycle of 50 Hz: is it an"
            + " alternating voltage?",
      })
  void whatIsNotRightIsSaidInOneSentence(double rmsVolts, double hertz, String sentence) {
    assertEquals(
        Optional.of(sentence),
        preflight.complaintAboutOutput(Signals.output(Signals.sine(rmsVolts, hertz))));
  }

  /** A sine of 530 V peak is over 500 V for 2 acos(500/530) / pi = 21.6 %: 22 of 100 samples. */
  @Test
  void clippedSignalIsNotRight() {
    assertEquals(
        Optional.of(
            "channel 1 (output) is clipped in 22.0 % of its samples at a range of 500 V peak:"
                + " are the probe factor of 100 and the nominal 230 V right? If so, use a probe with a"
                + " larger factor"),
        preflight.complaintAboutOutput(Signals.output(Signals.sine(375, 50))));
  }

  @Test
  void mainsChannelIsLookedAtToo() {
    assertEquals(
        Optional.of(
            "channel 2 (mains) shows 0.0 V RMS where 230 V is nominal: no signal. Connect the probe"
                + " downstream of the mains switch and close the switch"),
        preflight.complaintAboutMains(Signals.both(Signals.sine(230, 50), Signals.sine(0, 50))));
  }

  @Test
  void supplyIsUnknownWithoutAMainsChannel() {
    double[] good = Signals.sine(230, 50);
    assertEquals(MainsState.UNKNOWN, preflight.supply(Signals.output(good)));
    assertEquals(MainsState.PRESENT, preflight.supply(Signals.both(good, good)));
    assertEquals(MainsState.POOR, preflight.supply(Signals.both(good, Signals.sine(100, 50))));
    assertEquals(MainsState.ABSENT, preflight.supply(Signals.both(good, Signals.sine(5, 50))));
  }

  /** A sine of amplitude A has the RMS value A / sqrt(2); the axis is exact. */
  @ParameterizedTest
  @CsvSource({"230, 50", "120, 60", "230, 51.37"})
  void figuresOfASineAreThoseItWasMadeOf(double rmsVolts, double hertz) {
    LiveSignal signal =
        LiveSignal.of(Signals.waveform(Signals.sine(rmsVolts, hertz)), Signals.TIME);
    assertEquals(rmsVolts, signal.rmsVolts(), rmsVolts * 2e-3);
    Double found = signal.frequencyHertz();
    assertNotNull(found);
    assertEquals(hertz, found, hertz * 1e-4);
    assertEquals(0, signal.clippedPercent());
  }

  @Test
  void silenceHasNoFrequency() {
    assertNull(LiveSignal.of(Signals.waveform(new double[1000]), Signals.TIME).frequencyHertz());
  }

  @Test
  void theReadingsNameWhatEachChannelShows() {
    assertEquals(
        "before the first trial: output 229.0 V RMS, 50.00 Hz",
        preflight.readings(Signals.output(Signals.sine(229, 50))));
  }
}

package mainsgap.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.junit.jupiter.api.Test;

/** Recordings in which mains goes and comes back, whose truth is written down here. */
class EveryEventTest {
  private static final TimeAxis TIME = new TimeAxis(-0.2, 1e-5, 180_000, 0);
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);
  private static final double PEAK_VOLTS = 230 * Math.sqrt(2);

  private static double mainsVolts(double seconds) {
    return PEAK_VOLTS * Math.sin(2 * Math.PI * 50 * seconds);
  }

  private static double inverterVolts(double seconds) {
    return PEAK_VOLTS * Math.sin(2 * Math.PI * 49.9 * seconds + 0.7);
  }

  /** Loss at 0.103 s for 8 ms, back to mains at 0.6 s for 4 ms, loss at 1.1 s for 9 ms. */
  private static double outputVolts(double seconds) {
    if (seconds < 0.103 || (seconds >= 0.604 && seconds < 1.1)) {
      return mainsVolts(seconds);
    }
    boolean isGap =
        seconds < 0.111
            || (seconds >= 0.6 && seconds < 0.604)
            || (seconds >= 1.1 && seconds < 1.109);
    return isGap ? 0 : inverterVolts(seconds);
  }

  private static boolean isMainsPresent(double seconds) {
    return seconds < 0.103 || (seconds > 0.4 && seconds < 1.1);
  }

  private static Waveform sampled(DoubleUnaryOperator signal) {
    SplittableRandom dice = new SplittableRandom(3);
    ByteBuffer block = ByteBuffer.allocate(TIME.length() * 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < TIME.length(); i++) {
      block.putDouble(signal.applyAsDouble(TIME.secondsAt(i)) + dice.nextDouble());
    }
    return new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
  }

  private static List<Double> millis(List<Outcome> outcomes) {
    return outcomes.stream()
        .map(outcome -> Math.rint(((Measured) outcome).transferMillis() * 20) / 20)
        .toList();
  }

  private static List<Event> events(List<Outcome> outcomes) {
    return outcomes.stream().map(outcome -> ((Measured) outcome).event()).toList();
  }

  @Test
  void lossesAndRestorationsTakeTurnsWhereNothingElseTells() {
    List<Outcome> found =
        EveryEvent.measure(Capture.ofOutput(TIME, sampled(EveryEventTest::outputVolts)), TASK);
    assertEquals(List.of(8.0, 4.0, 9.0), millis(found));
    assertEquals(List.of(Event.LOSS, Event.RESTORATION, Event.LOSS), events(found));
  }

  @Test
  void theMainsChannelTellsWhichWayMainsWent() {
    Map<ChannelRole, Waveform> channels = new EnumMap<>(ChannelRole.class);
    channels.put(ChannelRole.OUTPUT, sampled(EveryEventTest::outputVolts));
    channels.put(
        ChannelRole.MAINS, sampled(seconds -> isMainsPresent(seconds) ? mainsVolts(seconds) : 0));
    MeasuringTask wrong = new MeasuringTask(Event.RESTORATION, 230, 50);
    List<Outcome> found = EveryEvent.measure(new Capture(TIME, channels), wrong);
    assertEquals(List.of(8.0, 4.0, 9.0), millis(found));
    assertEquals(List.of(Event.LOSS, Event.RESTORATION, Event.LOSS), events(found));
  }

  @Test
  void noEventIsBlamedForTheOnesAfterIt() {
    List<Outcome> found =
        EveryEvent.measure(Capture.ofOutput(TIME, sampled(EveryEventTest::outputVolts)), TASK);
    for (Outcome outcome : found) {
      assertEquals(FurtherInterruptions.NONE, ((Measured) outcome).furtherInterruptions());
    }
  }

  @Test
  void instantsStayOnTheTimeAxisOfTheWholeRecording() {
    Measured last =
        (Measured)
            EveryEvent.measure(Capture.ofOutput(TIME, sampled(EveryEventTest::outputVolts)), TASK)
                .get(2);
    assertEquals(1.1, last.lossSeconds(), 2e-5);
  }

  @Test
  void aRecordingWithoutAnEventIsRefusedOnce() {
    List<Outcome> found =
        EveryEvent.measure(Capture.ofOutput(TIME, sampled(EveryEventTest::mainsVolts)), TASK);
    assertEquals(1, found.size());
    assertEquals(Outcome.Kind.REFUSED, found.get(0).kind());
  }
}

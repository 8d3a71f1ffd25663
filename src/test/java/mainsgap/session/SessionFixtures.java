package mainsgap.session;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/** Invented sessions for the tests. */
final class SessionFixtures {
  static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
  static final Judgement PASSED =
      new Judgement(Verdict.PASS, "guarded", "PASS", "8.123 ms + 0.1 ms is within 20 ms");
  private static final Supplies SUPPLIES = new Supplies(50.01, null, -1.25, 0.1 + 0.2);

  private SessionFixtures() {}

  static SessionHeader header() {
    return new SessionHeader(
        NOON,
        "0.1.0",
        true,
        "Invented Lumengrove 600",
        DeclaredClaim.ofMillis(20, "< 20 ms"),
        new MeasuringTask(Event.LOSS, 230, 50),
        "an invented oscilloscope, profile invented",
        Map.of("probe", "100:1"),
        Map.of("load", "60 W, resistive"));
  }

  static Trial trial(int number) {
    return new Trial(number, at(number), capture(number), measured(number), PASSED);
  }

  static Trial refused(int number) {
    return new Trial(
        number, at(number), capture(number), new Refused("clipped: choose 400 V or more"), null);
  }

  static Remark remark(Remark.Kind kind) {
    return new Remark(at(90), kind, "a remark with 'quotes', \"more\", µs and a\nline");
  }

  static Instant at(int number) {
    return NOON.plusSeconds(60L * number).plusNanos(1_000_000);
  }

  /** Two channels of different formats: bytes that pack well, and bytes that do not. */
  static Capture capture(int seed) {
    byte[] noise = new byte[2 * 400];
    new Random(seed).nextBytes(noise);
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    waveforms.put(
        ChannelRole.OUTPUT,
        new Waveform(
            noise, CodeFormat.SIGNED_16_LSB_FIRST, new Scale(0, 0.1, 1 / 3.0, -32768, 32767)));
    waveforms.put(
        ChannelRole.MAINS, new Waveform(new byte[400], CodeFormat.UNSIGNED_8, Scale.VOLTS));
    return new Capture(new TimeAxis(-0.01, 1e-4, 400, 25), waveforms);
  }

  static Trial trialWithCleanness(int number) {
    return new Trial(number, at(number), capture(number), measuredWithCleanness(number), PASSED);
  }

  static Measured measured(int number) {
    return measured(number, null);
  }

  static Measured measuredWithCleanness(int number) {
    return measured(
        number,
        new Cleanness(
            12.5,
            false,
            0.0,
            null,
            new Cleanness.Distortion(1 / 3.0, 10),
            0.1,
            1.4,
            -0.5,
            1.5,
            null,
            0,
            11.5,
            new Cleanness.Residual(5.0, 3.0, null)));
  }

  private static Measured measured(int number, @Nullable Cleanness cleanness) {
    return new Measured(
        Event.LOSS,
        1e-3 / 3,
        1e-3 / 3,
        0.008,
        0.0081,
        8.0 + number / 7.0,
        new UncertaintyBudget(
            List.of(new UncertaintyBudget.Component("change points", 0.1 / 3, false)), 2.0),
        FurtherInterruptions.ofUnknownLength(1),
        3.5,
        null,
        9.9,
        123.4,
        SUPPLIES,
        cleanness,
        OtherChannels.NONE);
  }

  static Outcome noReturn() {
    return new NoReturn(Event.LOSS, 0.001, 0.002, 29.0, 0.1, 45, 28.0, SUPPLIES, false, null);
  }

  static Outcome noInterruption() {
    return new NoInterruption(
        Event.RESTORATION, 0.25, "the frequency changed", 0.001, 270, SUPPLIES);
  }
}

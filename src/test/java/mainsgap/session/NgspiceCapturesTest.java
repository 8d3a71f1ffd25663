package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import mainsgap.signal.Capture;
import mainsgap.signal.Event;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.CleannessWord;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Outcome.Kind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.AggregateWith;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.aggregator.ArgumentsAggregator;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Captures that the circuit simulator ngspice computed, held against the instants written in its
 * netlists: test-fixtures/ngspice, whose README says how good that truth is.
 */
class NgspiceCapturesTest {
  private static final Path FOLDER = Path.of("test-fixtures", "ngspice");

  /** The truth is good to 5 us; the rest is two samples of 20 us. */
  private static final double INSTANT_MILLIS = 0.045;

  private static final double TRUTH_MILLIS = 0.005;

  /** A load that an inverter feeds from a small voltage up leaves the return less sharp. */
  private static final double SOFT_RETURN_MILLIS = 1;

  /** Without a gap the change is told to a part of a cycle. */
  private static final double CHANGE_MILLIS = 5;

  private static final double ANGLE_DEGREES = 1;

  /** Whole volts in one file, the filter's ring at the make in others. */
  private static final double THD_PERCENT = 0.03;

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(files = "test-fixtures/ngspice/truth.csv", numLinesToSkip = 1)
  void captureIsMeasuredAsItsNetlistSays(@AggregateWith(TruthReader.class) Truth truth) {
    Capture capture = CaptureFile.read(FOLDER.resolve(truth.file), CaptureFileOptions.NONE);

    Outcome outcome = TransferMeasurement.measure(capture, truth.task);

    assertEquals(truth.kind(), outcome.kind(), outcome.sentence());
    switch (outcome.kind()) {
      case MEASURED -> {
        holds(truth, (Measured) outcome);
        isAsClean(truth, capture, ((Measured) outcome).cleanness());
      }
      case NO_RETURN -> holds(truth, (NoReturn) outcome, endMillis(capture));
      case NO_INTERRUPTION -> holds(truth, (NoInterruption) outcome);
      case REFUSED -> throw new AssertionError("no netlist expects a refusal");
    }
  }

  private static void holds(Truth truth, Measured found) {
    double u = found.uncertaintyMillis();
    assertAll(
        () -> assertEquals(truth.task.event(), found.event()),
        () -> near("loss", truth.lossMillis, found.lossSeconds() * 1e3, INSTANT_MILLIS),
        () ->
            near(
                "last opening",
                truth.lastOpeningMillis,
                found.lastOpeningSeconds() * 1e3,
                INSTANT_MILLIS),
        () ->
            near(
                "first return",
                truth.firstReturnMillis,
                found.firstReturnSeconds() * 1e3,
                truth.returnBoundMillis()),
        () ->
            near(
                "return",
                truth.returnMillis,
                found.returnSeconds() * 1e3,
                truth.returnBoundMillis()),
        () -> near("transfer time", truth.transferMillis, found.transferMillis(), u + TRUTH_MILLIS),
        () -> assertTrue(u > 0 && u <= truth.returnBoundMillis(), "uncertainty " + u + " ms"),
        () -> assertEquals(0, found.furtherInterruptions().count(), "further interruptions"),
        () -> angle("point on wave", truth.pointOnWaveDegrees, found.pointOnWaveDegrees()),
        () -> angle("phase step", truth.phaseStepDegrees, found.supplies().phaseStepDegrees()));
  }

  /**
   * The grid carries 2 % of the fifth and 1 % of the seventh harmonic, the inverters none; peaks
   * are read from the file, from the netlist's first return on.
   */
  private static void isAsClean(Truth truth, Capture capture, @Nullable Cleanness cleanness) {
    Cleanness found = Objects.requireNonNull(cleanness);
    boolean toGrid = truth.task.event() == Event.RESTORATION;
    double grid = 100 * Math.hypot(0.02, 0.01);
    double firstReturn = Objects.requireNonNull(truth.firstReturnMillis) / 1e3;
    double peak = 0;
    for (int i = 0; i < capture.time().length(); i++) {
      double volts = capture.output().voltsAt(i);
      peak = capture.time().secondsAt(i) > firstReturn ? Math.max(peak, Math.abs(volts)) : peak;
    }
    double overshoot = Math.max(0, 100 * (peak / truth.task.nominalPeakVolts() - 1));
    assertAll(
        () -> near("THD before", toGrid ? 0 : grid, percent(found.thdBefore()), THD_PERCENT),
        () -> near("THD after", toGrid ? grid : 0, percent(found.thdAfter()), THD_PERCENT),
        () -> near("DC", 0.0, Objects.requireNonNull(found.dcOffsetPercent()), 0.01),
        () -> near("overshoot", overshoot, found.peakOvershootPercent(), 0.3),
        () -> assertEquals(0, found.restrikes()),
        () -> assertEquals(expectedWord(truth), found.word()));
  }

  private static double percent(Cleanness.@Nullable Distortion distortion) {
    return Objects.requireNonNull(distortion).percent();
  }

  /** Only the inverter that is at 40 % as the relay makes leaves the load low for long. */
  private static CleannessWord expectedWord(Truth truth) {
    return truth.file.startsWith("soft-start") ? CleannessWord.ROUGH : CleannessWord.CLEAN;
  }

  private static void holds(Truth truth, NoReturn found, double endMillis) {
    double lossMillis = Objects.requireNonNull(truth.lossMillis);
    assertAll(
        () -> near("loss", truth.lossMillis, found.lossSeconds() * 1e3, INSTANT_MILLIS),
        () ->
            near(
                "last opening",
                truth.lastOpeningMillis,
                found.lastOpeningSeconds() * 1e3,
                INSTANT_MILLIS),
        () -> near("at least", endMillis - lossMillis, found.atLeastMillis(), INSTANT_MILLIS),
        () -> angle("point on wave", truth.pointOnWaveDegrees, found.pointOnWaveDegrees()));
  }

  /** The netlist has no mains channel: the output itself has to prove the change. */
  private static void holds(Truth truth, NoInterruption found) {
    assertAll(
        () -> near("change", truth.lossMillis, found.eventSeconds() * 1e3, CHANGE_MILLIS),
        () -> assertTrue(found.proof().contains("phase changed by"), found.proof()),
        () -> assertTrue(found.shortestVisibleMillis() < 1, found.sentence()),
        () -> angle("point on wave", truth.pointOnWaveDegrees, found.pointOnWaveDegrees()),
        () -> angle("phase step", truth.phaseStepDegrees, found.supplies().phaseStepDegrees()));
  }

  private static double endMillis(Capture capture) {
    return 1e3 * capture.time().secondsAt(capture.time().length() - 1);
  }

  private static void near(String what, @Nullable Double truth, double found, double bound) {
    assertEquals(Objects.requireNonNull(truth, what), found, bound, what);
  }

  private static void angle(String what, @Nullable Double truth, @Nullable Double found) {
    assertNotNull(truth, what);
    assertNotNull(found, what);
    assertEquals(0, Math.IEEEremainder(found - truth, 360), ANGLE_DEGREES, what + " in degrees");
  }

  /** One line of truth.csv. */
  private record Truth(
      String file,
      MeasuringTask task,
      double pointOnWaveDegrees,
      Double lossMillis,
      Double lastOpeningMillis,
      @Nullable Double firstReturnMillis,
      @Nullable Double returnMillis,
      @Nullable Double transferMillis,
      @Nullable Double phaseStepDegrees) {

    Kind kind() {
      if (transferMillis == null) {
        return Kind.NO_RETURN;
      }
      return transferMillis == 0 ? Kind.NO_INTERRUPTION : Kind.MEASURED;
    }

    double returnBoundMillis() {
      return file.startsWith("soft-start") ? SOFT_RETURN_MILLIS : INSTANT_MILLIS;
    }
  }

  private static final class TruthReader implements ArgumentsAggregator {
    @Override
    public Truth aggregateArguments(ArgumentsAccessor line, ParameterContext context) {
      return new Truth(
          line.getString(0),
          new MeasuringTask(
              Event.valueOf(line.getString(1).toUpperCase(Locale.ROOT)),
              line.getDouble(2),
              line.getDouble(3)),
          line.getDouble(5),
          line.getDouble(6),
          line.getDouble(7),
          line.getDouble(8),
          line.getDouble(9),
          line.getDouble(10),
          line.getDouble(11));
    }
  }
}

package mainsgap.simulation;

import static java.util.Objects.requireNonNull;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import mainsgap.simulation.TrialTruth.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The units: what their truth says against what their voltages do. */
class UnitsTest {
  private static final int OPENINGS = 200;

  private static BackupUnit unit(SimulatedUnit kind, SimulatedLoad load, long seed) {
    SimulatedBenchSettings settings = SimulatedBenchSettings.of(kind, seed).withLoad(load);
    return PowerSide.unitOf(settings);
  }

  private static TrialTruth truthOf(Episode episode) {
    return requireNonNull(episode.truth());
  }

  /** The ranges are common practice for these structures, without a bouncing mains switch. */
  @ParameterizedTest
  @CsvSource({"STANDBY, 6.5, 13.5", "STANDBY_STEPPED, 6.5, 13.5", "LINE_INTERACTIVE, 1.8, 6"})
  void transfersTakeWhatTheirStructureTakes(SimulatedUnit kind, double least, double most) {
    double[] times =
        IntStream.rangeClosed(1, OPENINGS)
            .mapToObj(number -> truthOf(unit(kind, SimulatedLoad.RESISTIVE, 1).opening(number)))
            .filter(truth -> !truth.bounced())
            .mapToDouble(truth -> requireNonNull(truth.transferMillis()))
            .toArray();
    assertTrue(times.length > OPENINGS / 2, "most openings are clean, found " + times.length);
    assertTrue(DoubleStream.of(times).min().orElseThrow() >= least);
    assertTrue(DoubleStream.of(times).max().orElseThrow() <= most);
  }

  @ParameterizedTest
  @EnumSource(
      value = SimulatedUnit.class,
      names = {"STANDBY", "STANDBY_STEPPED", "STANDBY_QUASI_SQUARE", "LINE_INTERACTIVE"})
  void outputIsDeadBetweenLastOpeningAndFirstReturn(SimulatedUnit kind) {
    BackupUnit unit = unit(kind, SimulatedLoad.RESISTIVE, 4);
    for (int number = 1; number <= 40; number++) {
      Episode episode = unit.opening(number);
      TrialTruth truth = truthOf(episode);
      double from = truth.lastOpeningSeconds() + 1.2e-3;
      double seconds = requireNonNull(truth.firstReturnSeconds()) - from - 1e-6;
      assertTrue(seconds < 0 || Levels.peakOf(episode.output(), from, seconds) < 2);
    }
  }

  @ParameterizedTest
  @EnumSource(SimulatedUnit.class)
  void outputBeforeTheLossAndAfterTheReturnIsNearNominal(SimulatedUnit kind) {
    Episode episode = unit(kind, SimulatedLoad.RESISTIVE, 9).opening(1);
    double cycle = 0.02;
    assertEquals(230, Levels.rmsOf(episode.output(), -10 * cycle, cycle), 0.04 * 230);
    double after = kind == SimulatedUnit.NEVER_RETURNS ? 0 : 230;
    assertEquals(
        after, Levels.rmsOf(episode.output(), episode.settledSeconds(), cycle), 0.045 * 230);
  }

  @Test
  void lossIsWhereTheOutputLeavesTheMains() {
    BackupUnit unit = unit(SimulatedUnit.STANDBY, SimulatedLoad.RESISTIVE, 2);
    for (int number = 1; number <= 40; number++) {
      Episode episode = unit.opening(number);
      TrialTruth truth = truthOf(episode);
      // until the loss both wires carry the mains
      assertEquals(0, apart(episode, truth.lossSeconds() - 1e-6), 1e-9);
      double late = truth.lossSeconds() + 1e-3;
      boolean remade = truth.bounced();
      assertTrue(remade || Levels.peakOf(episode.output(), late, 1e-3) < 5);
    }
  }

  private static double apart(Episode episode, double seconds) {
    return Math.abs(episode.output().voltsAt(seconds) - episode.mains().voltsAt(seconds));
  }

  @Test
  void capacitiveLoadKeepsAResidue() {
    int kept = 0;
    for (int number = 1; number <= 40; number++) {
      Episode episode = unit(SimulatedUnit.STANDBY, SimulatedLoad.CAPACITIVE, 6).opening(number);
      double at = truthOf(episode).lastOpeningSeconds() + 1e-3;
      kept += Math.abs(episode.output().voltsAt(at)) > 50 ? 1 : 0;
    }
    assertTrue(kept > 20, "a residue over 50 V after 1 ms in most openings, found " + kept);
  }

  @Test
  void doubleConversionNeverLosesItsOutput() {
    BackupUnit unit = unit(SimulatedUnit.DOUBLE_CONVERSION, SimulatedLoad.RESISTIVE, 3);
    for (int number = 1; number <= 20; number++) {
      Episode episode = unit.opening(number);
      TrialTruth truth = truthOf(episode);
      assertEquals(Kind.NO_GAP, truth.kind());
      assertEquals(0.0, truth.transferMillis());
      for (double from = -0.02; from < 0.06; from += 0.01) {
        assertEquals(230, Levels.rmsOf(episode.output(), from, 0.01), 0.03 * 230);
      }
      double stepHertz = requireNonNull(truth.supplyAfterHertz()) - truth.supplyBeforeHertz();
      assertTrue(Math.abs(stepHertz) >= 0.02, "its own frequency, found " + stepHertz);
    }
  }

  @Test
  void unitThatNeverReturnsHasNoTransferTime() {
    TrialTruth truth =
        truthOf(unit(SimulatedUnit.NEVER_RETURNS, SimulatedLoad.RESISTIVE, 3).opening(1));
    assertEquals(Kind.NO_RETURN, truth.kind());
    assertNull(truth.transferMillis());
    assertNull(truth.returnSeconds());
  }

  @Test
  void openingsComeAtEveryAngle() {
    BackupUnit unit = unit(SimulatedUnit.STANDBY, SimulatedLoad.RESISTIVE, 5);
    int[] eighths = new int[8];
    for (int number = 1; number <= OPENINGS; number++) {
      eighths[(int) (truthOf(unit.opening(number)).pointOnWaveDegrees() / 45)]++;
    }
    assertTrue(IntStream.of(eighths).min().orElseThrow() >= 8);
  }

  @Test
  void switchBouncesInAPartOfTheOpenings() {
    BackupUnit unit = unit(SimulatedUnit.STANDBY, SimulatedLoad.RESISTIVE, 5);
    double bounced =
        IntStream.rangeClosed(1, OPENINGS)
            .filter(number -> truthOf(unit.opening(number)).bounced())
            .count();
    assertEquals(0.25 * OPENINGS, bounced, 0.1 * OPENINGS);
  }

  @Test
  void detectionNearAZeroCrossingTakesLonger() {
    HarmonicSupply crossing =
        new HarmonicSupply(new Phase(50, 0, 0), 230, 0, new SplittableRandom(1));
    HarmonicSupply peak = new HarmonicSupply(new Phase(50, 0, 90), 230, 0, new SplittableRandom(1));
    LossDetector detector = new LossDetector(0.3 * 230 * Math.sqrt(2), 1e-3);
    double early = detector.noticesAt(peak, Voltage.NONE);
    double late = detector.noticesAt(crossing, Voltage.NONE);
    assertEquals(1e-3, early, 5e-5);
    // asin(0.3) of a 50 Hz cycle is 0.970 ms
    assertEquals(1.970e-3, late, 5e-5);
  }

  @Test
  void restorationLosesTheInverterAndReturnsToTheMains() {
    Episode episode = unit(SimulatedUnit.STANDBY, SimulatedLoad.RESISTIVE, 8).closing(2);
    TrialTruth truth = truthOf(episode);
    assertEquals(TrialTruth.Change.CLOSING, truth.change());
    assertTrue(truth.lossSeconds() >= 0.8 && truth.lossSeconds() <= 1.2);
    double millis = requireNonNull(truth.transferMillis());
    assertTrue(millis > 1.5 && millis < 4, "a short gap, found " + millis);
    double later = requireNonNull(truth.returnSeconds()) + 0.01;
    assertEquals(episode.mains().voltsAt(later), episode.output().voltsAt(later), 1e-9);
  }

  @Test
  void sameSeedAndNumberGiveTheSameEvent() {
    Episode one = unit(SimulatedUnit.STANDBY, SimulatedLoad.RESISTIVE, 8).opening(3);
    BackupUnit other = unit(SimulatedUnit.STANDBY, SimulatedLoad.RESISTIVE, 8);
    other.opening(1);
    other.closing(1);
    Episode same = other.opening(3);
    assertEquals(one.truth(), same.truth());
    assertEquals(one.output().voltsAt(0.0123), same.output().voltsAt(0.0123));
    assertTrue(truthOf(one).lossSeconds() >= 0);
    assertTrue(!truthOf(one).equals(truthOf(other.opening(4))));
  }

  @Test
  void unknownUnitIsRefusedWithTheNamesThatThereAre() {
    IllegalArgumentException refusal =
        assertThrows(IllegalArgumentException.class, () -> SimulatedUnit.named("stanby"));
    assertEquals(
        "there is no simulated unit 'stanby': choose one of standby, standby-stepped,"
            + " standby-quasi-square, line-interactive, double-conversion, never-returns",
        refusal.getMessage());
    assertEquals(SimulatedUnit.STANDBY, SimulatedUnit.named("standby"));
  }
}

package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import mainsgap.simulation.SimulatedUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Whether outcomes and stated intervals hold the truth of the simulated bench, which the measuring
 * code never sees. {@code mvn -P hunt test} looks at many seeds and tells what it finds.
 */
class SimulatedTruthTest {
  private static final Logger LOG = LoggerFactory.getLogger(SimulatedTruthTest.class);

  /** Of intervals that hold 95 %: 465 of 500 lies two standard deviations below. */
  private static final double LEAST_HELD = 0.93;

  /** How long a make bounces is told to this. */
  private static final double BOUNCE_MILLIS = 0.1;

  private static final double LEAST_FOUND = 0.85;

  private static final int TRIALS = 5;

  private final Path folder;

  SimulatedTruthTest(@TempDir Path folder) {
    this.folder = folder;
  }

  /** Relays bounce, loads discharge between the makes, inverters start softly and ring. */
  @ParameterizedTest
  @CsvSource({"STANDBY, 6", "LINE_INTERACTIVE, 4", "STANDBY_STEPPED, 4", "STANDBY_QUASI_SQUARE, 4"})
  void statedIntervalsHoldTheTruth(SimulatedUnit unit, int seeds) {
    List<KnownTrial> trials = trials(unit, seeds);

    assertAll(
        () -> assertKinds(trials), () -> assertHeld(trials), () -> assertBouncesFound(trials));
  }

  @ParameterizedTest
  @EnumSource
  void outcomeIsOfTheKindThatTheUnitGives(SimulatedUnit unit) {
    assertKinds(KnownSeries.run(unit, 7, 2, folder));
  }

  /** In this trial the residue decays along the supply after for its first 50 us. */
  @Test
  void residueThatPassesTheSupplyAfterIsStillAGap() {
    assertKinds(KnownSeries.run(SimulatedUnit.STANDBY, 9, 1, folder));
  }

  @Tag("hunt")
  @ParameterizedTest
  @CsvSource({
    "STANDBY, 100",
    "LINE_INTERACTIVE, 20",
    "STANDBY_STEPPED, 20",
    "STANDBY_QUASI_SQUARE, 20",
    "DOUBLE_CONVERSION, 10",
    "NEVER_RETURNS, 10"
  })
  void manySeedsHoldTheTruth(SimulatedUnit unit, int seeds) {
    List<KnownTrial> trials = trials(unit, seeds);

    LOG.warn("{}", table(unit, trials));
    assertAll(
        () -> assertKinds(trials), () -> assertHeld(trials), () -> assertBouncesFound(trials));
  }

  private List<KnownTrial> trials(SimulatedUnit unit, int seeds) {
    List<KnownTrial> trials = new ArrayList<>();
    for (long seed = 1; seed <= seeds; seed++) {
      trials.addAll(KnownSeries.run(unit, seed, TRIALS, folder));
    }
    assertEquals(seeds * TRIALS, trials.size());
    return trials;
  }

  private static void assertKinds(List<KnownTrial> trials) {
    assertEquals(List.of(), trials.stream().filter(trial -> !trial.isOfTheRightKind()).toList());
  }

  private static void assertHeld(List<KnownTrial> trials) {
    List<KnownTrial> gaps = trials.stream().filter(KnownTrial::isGap).toList();
    List<KnownTrial> missed = gaps.stream().filter(trial -> !trial.isHeld()).toList();
    assertTrue(
        gaps.size() - missed.size() >= LEAST_HELD * gaps.size(),
        () -> missed.size() + " of " + gaps.size() + " intervals miss the truth: " + missed);
  }

  private static void assertBouncesFound(List<KnownTrial> trials) {
    List<KnownTrial> gaps = trials.stream().filter(KnownTrial::isGap).toList();
    List<KnownTrial> missed =
        gaps.stream().filter(trial -> Math.abs(trial.bounceErrorMillis()) > BOUNCE_MILLIS).toList();
    assertTrue(
        gaps.size() - missed.size() >= LEAST_FOUND * gaps.size(),
        () -> missed.size() + " of " + gaps.size() + " makes bounced otherwise: " + missed);
  }

  private static String table(SimulatedUnit unit, List<KnownTrial> trials) {
    List<KnownTrial> missed =
        trials.stream()
            .filter(trial -> !trial.isOfTheRightKind() || (trial.isGap() && !trial.isHeld()))
            .toList();
    StringBuilder table = new StringBuilder();
    table.append(
        String.format(
            Locale.ROOT,
            "%s: %d trials, %d of the right kind, %d held of %d gaps, |error| median %.1f us, largest"
                + " %.1f us, U median %.1f us, largest %.1f us",
            unit.label(),
            trials.size(),
            trials.stream().filter(KnownTrial::isOfTheRightKind).count(),
            trials.stream().filter(KnownTrial::isHeld).count(),
            trials.stream().filter(KnownTrial::isGap).count(),
            micros(trials, trial -> Math.abs(trial.errorMillis()), 0.5),
            micros(trials, trial -> Math.abs(trial.errorMillis()), 1),
            micros(trials, KnownTrial::uncertaintyMillis, 0.5),
            micros(trials, KnownTrial::uncertaintyMillis, 1)));
    missed.forEach(trial -> table.append("\n  ").append(trial));
    return table.toString();
  }

  private static double micros(
      List<KnownTrial> trials, ToDoubleFunction<KnownTrial> millis, double share) {
    double[] sorted =
        trials.stream().filter(KnownTrial::isGap).mapToDouble(millis).sorted().toArray();
    return sorted.length == 0 ? Double.NaN : 1e3 * sorted[(int) (share * (sorted.length - 1))];
  }
}

package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import mainsgap.session.SessionReader;
import mainsgap.transfer.claim.DecisionRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole series on the built-in simulated bench, as a user runs them. */
class RunCommandTest {
  private final Path session;

  RunCommandTest(@TempDir Path folder) {
    session = folder.resolve("series.mainsgap");
  }

  @Test
  void aSeriesOnTheSimulatedBenchIsMeasuredJudgedAndKept() {
    CommandRun run = simulated("--trials=5", "--rated=20ms", "--seed=7");
    assertEquals(0, run.exit(), run.err());
    for (int trial = 1; trial <= 5; trial++) {
      Matcher line =
          Pattern.compile("trial " + trial + " +[\\d.]+ ms ± [\\d.]+ ms  PASS: declared 20ms")
              .matcher(run.err());
      assertTrue(line.find(), run.err());
    }
    assertTrue(run.out().contains("upper bound"), run.out());
    assertTrue(run.out().contains(session.toString()), run.out());
    try (SessionReader reader = SessionReader.open(session)) {
      assertEquals(5, reader.session().trials().size());
      assertTrue(run.out().contains(reader.session().lastSeal()), run.out());
    }
    assertEquals(0, CommandRun.of("recheck", session.toString()).exit());
  }

  @Test
  void theBudgetOfEachTrialIsTheSameInTheSeriesAndInItsRecheck() {
    CommandRun run = simulated("--trials=2", "--seed=7", "--uncertainty-budget");
    String budgets = run.out().substring(run.out().indexOf("\nuncertainty, trial 1"));
    assertTrue(budgets.contains("\nuncertainty, trial 2"), budgets);
    assertTrue(budgets.contains("loss: quantisation in steps of "), budgets);
    CommandRun recheck = CommandRun.of("recheck", session.toString(), "--uncertainty-budget");
    assertTrue(recheck.out().endsWith(budgets), recheck.out());
  }

  @Test
  void standardOutputHoldsOneJsonDocumentAndNothingElse() throws IOException {
    CommandRun run = simulated("--trials=3", "--rated=20ms", "--seed=7", "--format=json");
    assertEquals(0, run.exit(), run.err());
    JsonNode document = new ObjectMapper().readTree(run.out());
    assertEquals(session.toString(), document.get("session").asText());
    assertEquals(3, document.get("trials").size());
    List<String> expected = new ArrayList<>(SeriesJsonTest.CAPTURE_NAMES);
    expected.addAll(List.of("number", "state"));
    document.get("trials").forEach(trial -> assertEquals(expected, SeriesJsonTest.names(trial)));
    assertEquals(3, document.get("summary").get("n").asInt());
  }

  @Test
  void theSameSeedGivesTheSameFigures() throws IOException {
    JsonNode first = trials(simulated("--trials=1", "--seed=3", "--format=json"));
    Files.delete(session);
    assertEquals(first, trials(simulated("--trials=1", "--seed=3", "--format=json")));
    Files.delete(session);
    assertNotEquals(first, trials(simulated("--trials=1", "--seed=4", "--format=json")));
  }

  @Test
  void aUnitThatIsTooSlowFailsWithCodeOne() {
    CommandRun run = simulated("--trials=2", "--rated=1ms", "--seed=7");
    assertEquals(1, run.exit(), run.err());
    assertTrue(run.out().contains("FAIL"), run.out());
  }

  @Test
  void theDecisionRuleGoesWithTheSessionAndItsRecheck() throws IOException {
    JsonNode trial =
        trials(
                simulated(
                    "--trials=1",
                    "--rated=20ms",
                    "--decision-rule=four-way",
                    "--seed=7",
                    "--format=json"))
            .get(0);
    assertEquals("pass", trial.get("ruleOutcome").asText());
    assertEquals(DecisionRule.FOUR_WAY.title(), trial.get("decisionRule").asText());
    try (SessionReader reader = SessionReader.open(session)) {
      assertEquals(DecisionRule.FOUR_WAY, reader.session().header().decisionRule());
    }
    CommandRun recheck = CommandRun.of("recheck", session.toString());
    assertEquals(0, recheck.exit(), recheck.out());
    CommandRun other = simulated("--trials=1", "--rated=20ms", "--seed=7", "--continue");
    assertEquals(2, other.exit(), other.err());
    assertTrue(other.err().contains("decision rule four-way"), other.err());
  }

  @Test
  void aUnitThatNeverReturnsIsAResult() throws IOException {
    CommandRun run =
        CommandRun.of(
            "run",
            "--simulated=never-returns",
            "--trials=1",
            "--rated=20ms",
            "--seed=7",
            "--format=json",
            "--session=" + session);
    assertEquals(1, run.exit(), run.err());
    JsonNode trial = trials(run).get(0);
    assertTrue(trial.get("transferTimeMs").isNull(), run.out());
    assertTrue(trial.get("transferTimeAtLeastMs").asDouble() > 20, run.out());
    assertEquals("FAIL", trial.get("verdict").asText());
  }

  @Test
  void aStopKeepsWhatWasLoggedAndSaysWhatMayBeLive() {
    CommandRun run =
        CommandRun.stoppedAt(
            "trial 2", "run", "--simulated", "--trials=500", "--seed=7", "--session=" + session);
    assertEquals(130, run.exit(), run.err());
    assertTrue(run.err().contains("live from its battery"), run.err());
    try (SessionReader reader = SessionReader.open(session)) {
      assertTrue(reader.session().trials().size() >= 2);
    }
  }

  @Test
  void anExistingSessionGoesOnOnlyWhenAsked() {
    assertEquals(0, simulated("--trials=1", "--seed=7").exit());
    CommandRun refused = simulated("--trials=2", "--seed=7");
    assertEquals(5, refused.exit(), refused.err());
    assertTrue(refused.err().contains("--continue"), refused.err());
    CommandRun goesOn = simulated("--trials=1", "--seed=8", "--continue");
    assertEquals(0, goesOn.exit(), goesOn.err());
    try (SessionReader reader = SessionReader.open(session)) {
      assertEquals(2, reader.session().trials().size());
    }
  }

  @Test
  void noWaitForTheTriggerIsWrongUse() {
    CommandRun run = simulated("--trigger-wait=0s");
    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains("--trigger-wait is a time above 0, found 0s"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"two\nlines", "\u001b[2J"})
  void aUnitsNameIsOnePlainLine(String name) {
    CommandRun run = simulated("--unit=" + name);
    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains("one plain line"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "a-file/series.mainsgap", "a-folder"})
  void aSessionThatCannotBeMadeIsOneSentenceAndCodeFive(String place) throws IOException {
    Path folder = Files.createDirectories(session.resolveSibling("a-folder"));
    Files.writeString(session.resolveSibling("a-file"), "not a folder");
    Path wanted = session.resolveSibling(place);
    CommandRun run = CommandRun.of("run", "--simulated", "--trials=1", "--session=" + wanted);
    assertEquals(5, run.exit(), run.err());
    assertEquals("", run.out());
    assertEquals(1, run.err().lines().filter(line -> line.startsWith("mainsgap: ")).count());
    assertTrue(Files.isDirectory(folder));
  }

  private CommandRun simulated(String... words) {
    List<String> all = new ArrayList<>(List.of("run", "--simulated", "--session=" + session));
    all.addAll(List.of(words));
    return CommandRun.of(all.toArray(String[]::new));
  }

  private static JsonNode trials(CommandRun run) throws IOException {
    return new ObjectMapper().readTree(run.out()).get("trials");
  }
}

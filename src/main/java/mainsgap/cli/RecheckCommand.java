package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import mainsgap.report.Readings;
import mainsgap.session.Recheck;
import mainsgap.session.Session;
import mainsgap.session.SessionReader;
import mainsgap.signal.Capture;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Whether a session still says what it said. */
@Command(
    name = "recheck",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description =
        "Verifies the seals of a session and measures every raw capture in it again; names each"
            + " figure that differs.",
    footer = {
      "",
      "Example:",
      "  mainsgap recheck unit-3.mainsgap",
      "",
      "Exit codes: 0 nothing differs; 1 the seals are intact and some figure differs, as after a",
      "change of the measurement; 5 a seal is broken or the file cannot be read."
    })
final class RecheckCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(index = "0", paramLabel = "SESSION", description = "The session file.")
  private @Nullable Path file;

  @Option(
      names = "--uncertainty-budget",
      description =
          "Tells below the results what the uncertainty of each transfer time that was measured again"
              + " is made of, line by line. In text.")
  private boolean budget;

  @Mixin private OutputFormat format = new OutputFormat();

  private final List<Outcome> measured = new ArrayList<>();

  RecheckCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    try (SessionReader reader = SessionReader.open(Objects.requireNonNull(file))) {
      Session session = reader.session();
      surroundings.progress(
          "seals of %s intact; measuring %s again",
          session.entryCount() == 1 ? "1 entry" : session.entryCount() + " entries",
          Readings.counted(session.trials().size(), "trial"));
      Recheck recheck = Recheck.of(reader, this::measured, TrialVerdict::judge);
      surroundings.print(format.isJson() ? RecheckWords.json(recheck) : RecheckWords.text(recheck));
      if (budget && !format.isJson()) {
        printBudgets(session);
      }
      return (recheck.differences().isEmpty() ? ExitCode.DONE : ExitCode.NOT_ALL_PASSED).number();
    } catch (StoppedException e) {
      surroundings.terminal().complain("stopped before all captures were measured again");
      return ExitCode.STOPPED.number();
    }
  }

  private Outcome measured(Capture capture, MeasuringTask task) {
    surroundings.stop().throwIfRequested();
    Outcome outcome = SteadyMeasurement.measure(capture, task);
    measured.add(outcome);
    return outcome;
  }

  /** The trials are measured in the order of the session. */
  private void printBudgets(Session session) {
    for (int i = 0; i < measured.size(); i++) {
      String name = "trial " + session.trials().get(i).number();
      surroundings.print(BudgetText.of(name, measured.get(i)));
    }
  }
}

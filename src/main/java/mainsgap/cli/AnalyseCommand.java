package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import mainsgap.session.CaptureFile;
import mainsgap.session.CaptureFileException;
import mainsgap.signal.Capture;
import mainsgap.signal.HeldSamples;
import mainsgap.transfer.EveryEvent;
import mainsgap.transfer.SilentChannels;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.SeriesVerdict;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.OutcomeNotes;
import mainsgap.transfer.outcome.Refused;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Measures captures that are already in files. */
@Command(
    name = "analyse",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description =
        "Measures recorded captures (CSV from any bench scope). The delimiter, a decimal comma, the"
            + " header, the units and the columns are found in the file; options override.",
    footer = {
      "",
      "Examples:",
      "  mainsgap analyse capture.csv --nominal 230 --rated 20ms",
      "  mainsgap analyse *.csv --nominal 120 --frequency 60 --format json",
      "  mainsgap analyse volts-only.csv --interval 10us --voltage-column 2 --scale 100",
      "",
      "Exit codes: 0 all measured, and passed where a time is declared; 1 measured, but some capture",
      "failed, was inconclusive, was refused or could not be read; 3 none could be measured."
    })
final class AnalyseCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Capture files.")
  private List<Path> files = new ArrayList<>();

  @Mixin private SupplyOptions supply = new SupplyOptions();

  @Mixin private CaptureFileLayout layout = new CaptureFileLayout();

  @Option(
      names = "--voltage-tolerance",
      description =
          "Tells below the table where each gap, and the swell behind it, stand on the ITI curve, SEMI"
              + " F47 and IEC 61000-4-11, and which loads ride through the gap. JSON has it always.")
  private boolean tolerance;

  @Option(
      names = "--uncertainty-budget",
      description =
          "Tells below the table what the uncertainty of each transfer time is made of, line by"
              + " line. JSON has it always.")
  private boolean budget;

  @Option(
      names = "--return-figures",
      description =
          "Tells below the table all figures of each return: offset, crest factor, steps, settling,"
              + " residuals, distortion. JSON has them always.")
  private boolean returnFigures;

  @Option(
      names = "--every-event",
      description =
          "Measures every event of a file, in their order, instead of the first alone. Which way"
              + " mains went is read from --mains-column; without it the first event is that of"
              + " --event, and losses and restorations take turns.")
  private boolean everyEvent;

  @Mixin private OutputFormat format = new OutputFormat();

  AnalyseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    MeasuringTask task = supply.task();
    List<AnalysedFile> results = new ArrayList<>();
    int measured = 0;
    for (Path file : files) {
      if (surroundings.stop().isRequested()) {
        surroundings.terminal().complain("stopped before " + file + " was measured");
        break;
      }
      results.addAll(measured(file, task));
      measured++;
    }
    surroundings.print(
        format.isJson() ? AnalysedFile.json(results, task) : AnalysedFile.text(results));
    if (!format.isJson()) {
      printBlocks(results, task);
    }
    return (measured < files.size() ? ExitCode.STOPPED : exit(results)).number();
  }

  private void printBlocks(List<AnalysedFile> results, MeasuringTask task) {
    DeclaredClaim claim = supply.claim();
    if (claim != null && !claim.isLimit()) {
      surroundings.print("\n" + TextWrap.labelled("compared", comparison(results, claim)));
    }
    if (returnFigures) {
      results.forEach(result -> surroundings.print(result.returnFigures()));
    }
    if (budget) {
      results.forEach(result -> surroundings.print(result.budget()));
    }
    if (tolerance) {
      results.forEach(result -> surroundings.print(result.tolerance(task)));
    }
  }

  /** A typical value is no limit of one transfer: it is held against the median of all. */
  private static String comparison(List<AnalysedFile> results, DeclaredClaim claim) {
    List<Outcome> outcomes = results.stream().map(result -> result.capture().outcome()).toList();
    return SeriesVerdict.judge(outcomes, claim).reason();
  }

  /**
   * Each event of a file, or its first. A file that cannot be read is reported, and is a refused
   * capture among the results.
   */
  private List<AnalysedFile> measured(Path file, MeasuringTask task) {
    try {
      Capture capture = CaptureFile.read(file, layout.options());
      List<Outcome> outcomes =
          everyEvent
              ? EveryEvent.measure(capture, task, SteadyMeasurement::measure)
              : List.of(SteadyMeasurement.measure(capture, task));
      List<AnalysedFile> events = new ArrayList<>();
      for (Outcome outcome : outcomes) {
        List<String> beside = new ArrayList<>(OutcomeNotes.of(outcome));
        beside.addAll(SilentChannels.of(capture, task, outcome));
        heldSamples(capture).ifPresent(beside::add);
        int event = everyEvent ? events.size() + 1 : 0;
        events.add(new AnalysedFile(file, event, judged(outcome, task), beside));
      }
      return events;
    } catch (CaptureFileException e) {
      String sentence = String.valueOf(e.getMessage());
      surroundings.terminal().complain(sentence);
      return List.of(new AnalysedFile(file, 0, judged(new Refused(sentence), task), List.of()));
    }
  }

  /** What is told of a file that was filled up; nothing of most. */
  private static Optional<String> heldSamples(Capture capture) {
    int times = HeldSamples.times(capture.output());
    return times == 1
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "each value stands %d times in a row: measured as sampled at %.4g kS/s",
                times,
                capture.time().sampleRateHertz() / times / 1e3));
  }

  private JudgedCapture judged(Outcome outcome, MeasuringTask task) {
    return JudgedCapture.of(outcome, task, supply.claim(), supply.rule());
  }

  private ExitCode exit(List<AnalysedFile> results) {
    if (results.stream().allMatch(result -> result.capture().isRefused())) {
      return ExitCode.NOTHING_MEASURED;
    }
    DeclaredClaim claim = supply.claim();
    boolean judged = claim != null && claim.isLimit();
    return results.stream().allMatch(result -> result.isGood(judged))
        ? ExitCode.DONE
        : ExitCode.NOT_ALL_PASSED;
  }
}

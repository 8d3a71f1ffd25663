package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import mainsgap.session.CaptureFile;
import mainsgap.session.CaptureFileException;
import mainsgap.transfer.MeasuringTask;
import mainsgap.transfer.Refused;
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
          "Tells below the table where each gap stands on the ITI curve, SEMI F47 and IEC 61000-4-11,"
              + " and which loads ride through it. In text only.")
  private boolean tolerance;

  @Mixin private OutputFormat format = new OutputFormat();

  AnalyseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    MeasuringTask task = supply.task();
    if (tolerance && format.isJson()) {
      throw supply.wrong("--voltage-tolerance is told in text only: leave out --format json");
    }
    List<AnalysedFile> results = new ArrayList<>();
    for (Path file : files) {
      if (surroundings.stop().isRequested()) {
        surroundings.terminal().complain("stopped before " + file + " was measured");
        break;
      }
      results.add(new AnalysedFile(file, measured(file, task)));
    }
    surroundings.print(format.isJson() ? AnalysedFile.json(results) : AnalysedFile.text(results));
    if (tolerance) {
      results.forEach(result -> surroundings.print(result.tolerance(task)));
    }
    return exit(results).number();
  }

  /** A file that cannot be read is reported, and is a refused capture among the results. */
  private JudgedCapture measured(Path file, MeasuringTask task) {
    try {
      return JudgedCapture.of(
          CaptureFile.read(file, layout.options()), task, supply.claim(), supply.rule());
    } catch (CaptureFileException e) {
      String sentence = String.valueOf(e.getMessage());
      surroundings.terminal().complain(sentence);
      return JudgedCapture.of(new Refused(sentence), task, supply.claim(), supply.rule());
    }
  }

  private ExitCode exit(List<AnalysedFile> results) {
    if (results.size() < files.size()) {
      return ExitCode.STOPPED;
    }
    if (results.stream().allMatch(result -> result.capture().isRefused())) {
      return ExitCode.NOTHING_MEASURED;
    }
    boolean judged = supply.claim() != null;
    return results.stream().allMatch(result -> result.isGood(judged))
        ? ExitCode.DONE
        : ExitCode.NOT_ALL_PASSED;
  }
}

package mainsgap.cli;

import java.util.Random;
import java.util.concurrent.Callable;
import mainsgap.bench.BenchException;
import mainsgap.bench.Cautions;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.Series;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.SeriesRequest;
import mainsgap.settings.SettingsException;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A series of trials. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description =
        "Runs a series of trials: arms the instrument, waits for the mains switch, measures, judges,"
            + " logs, and does it again.",
    footer = {
      "",
      "Examples:",
      "  mainsgap run --simulated --trials 5 --rated 20ms --seed 7",
      "  mainsgap run --instrument TCPIP::192.168.1.20::5025::SOCKET --rig my-rig.toml \\",
      "      --unit 'unit 3 on the shelf' --rated 10ms --trials 20 --cautions-read",
      "",
      "The results go to standard output, everything else to standard error. With a hand on the",
      "switch, the prompt says when to move it; no key is needed. Enter ends a settling time early.",
      "Ctrl-C stops: the instrument is disarmed, what was logged stays, and a switch that a hand moves",
      "stays as it is; one that the program commands is opened.",
      "",
      "Where the rig file names a commanded mains switch ([mains-switch]), the program opens it,",
      "only while the instrument is armed, and after a random delay, so that the points on wave",
      "spread. It closes it only on a fresh Enter, unless the rig file says that the rig restores by",
      "itself. Ctrl-C is the emergency off: it opens the switch at once, and so does every end of",
      "the series. The unit's output stays live from its battery.",
      "",
      "A plan (--plan FILE) holds trials, waits, delays or angles of a series as data; --dry-run",
      "tells what would be done and opens nothing. What is given here goes before the plan, the plan",
      "before the rig file. A restoration is waited for up to 6 minutes: units check the mains first."
    })
final class RunCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private SeriesOptions options = new SeriesOptions();

  @Option(
      names = "--uncertainty-budget",
      description =
          "Tells below the results what the uncertainty of each transfer time is made of, line by"
              + " line. JSON has it always.")
  private boolean budget;

  @Mixin private OutputFormat format = new OutputFormat();

  RunCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    SeriesRequest request = options.request(new Random().nextInt(1_000_000));
    if (options.isDryRun()) {
      return rehearse(request);
    }
    if (request.instrument() instanceof InstrumentChoice.Real) {
      surroundings.terminal().err().print(CautionsText.bulleted(Cautions.of(request)));
      if (!options.areCautionsRead()) {
        surroundings
            .terminal()
            .complain(
                "nothing was armed: read the cautions above, then add --cautions-read to say so");
        return ExitCode.WRONG_USE.number();
      }
    }
    SeriesProgress progress = new SeriesProgress(surroundings, request);
    SeriesEnd end = runSeries(request, progress);
    if (end.session() != null) {
      surroundings.progress("");
      surroundings.print(
          format.isJson()
              ? SeriesJson.of(end, ratedMillis(request))
              : SeriesText.of(end, request.claim()));
      if (budget && !format.isJson()) {
        surroundings.print(SeriesText.budgets(end));
      }
    }
    return farewell(end, request, progress.isSwitchCommanded()).number();
  }

  private int rehearse(SeriesRequest request) {
    try {
      Series.of(request)
          .rehearsal()
          .forEach(step -> surroundings.print(TextWrap.hanging("- ", step) + "\n"));
      return ExitCode.DONE.number();
    } catch (BenchException | SettingsException e) {
      throw new CommandFailure(ExitCode.WRONG_USE, String.valueOf(e.getMessage()), e);
    }
  }

  private SeriesEnd runSeries(SeriesRequest request, SeriesProgress progress) {
    Series series = Series.of(request);
    if (request.instrument() instanceof InstrumentChoice.Simulated simulated) {
      surroundings.progress(
          "simulated bench: unit %s, seed %d", simulated.unit(), simulated.seed());
    } else {
      listen(series);
    }
    return series.run(progress, surroundings.stop());
  }

  /** Enter goes on, and lets mains close where that is asked for. Nobody answers from a pipe. */
  private void listen(Series series) {
    if (!surroundings.terminal().personAtInput()) {
      series.withholdConsent(
          "closing the mains switch needs a fresh Enter of a person, but standard input is no"
              + " terminal: run this at one, or, for a rig that may run unattended, write"
              + " restores-by-itself = true under [mains-switch] in its rig file");
    }
    EnterKey.listen(
        surroundings.terminal().in(),
        () -> {
          series.proceed();
          series.letMainsClose();
        },
        () ->
            series.withholdConsent(
                "standard input has ended, so nobody can let the mains switch close: mains stays"
                    + " off"));
  }

  private static @Nullable Double ratedMillis(SeriesRequest request) {
    DeclaredClaim claim = request.claim();
    return claim == null ? null : (Double) claim.millis();
  }

  private ExitCode farewell(SeriesEnd end, SeriesRequest request, boolean switchCommanded) {
    if (end.kind() != SeriesEnd.Kind.COMPLETE) {
      surroundings.terminal().complain(end.sentence());
    }
    if (format.isJson() && end.lastSeal() != null) {
      surroundings.progress("last seal %s", end.lastSeal());
    }
    if (end.session() != null && end.kind() != SeriesEnd.Kind.COMPLETE) {
      surroundings.progress(
          "%s",
          TextWrap.paragraph(
              (end.kind() == SeriesEnd.Kind.INSTRUMENT_FAILED
                      ? "The instrument may still be armed: look at it."
                      : "The instrument is disarmed.")
                  + (switchCommanded
                      ? " Look at the mains switch before you touch anything."
                      : " Mains is left as it is.")
                  + " The unit's output may still be live from its battery."));
    }
    DeclaredClaim claim = request.claim();
    return SeriesExit.of(end, claim != null && claim.isLimit());
  }
}

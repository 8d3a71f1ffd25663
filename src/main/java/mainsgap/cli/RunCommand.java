package mainsgap.cli;

import java.util.Random;
import java.util.concurrent.Callable;
import mainsgap.bench.Cautions;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.Series;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.SeriesRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
      "Ctrl-C stops: the instrument is disarmed, what was logged stays, mains stays as it is."
    })
final class RunCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private SeriesOptions options = new SeriesOptions();

  @Mixin private OutputFormat format = new OutputFormat();

  RunCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    SeriesRequest request = options.request(new Random().nextInt(1_000_000));
    if (options.isReal()) {
      surroundings.terminal().err().print(bulleted());
      if (!options.areCautionsRead()) {
        surroundings
            .terminal()
            .complain(
                "nothing was armed: read the cautions above, then add --cautions-read to say so");
        return ExitCode.WRONG_USE.number();
      }
    }
    SeriesEnd end = runSeries(request);
    if (end.session() != null) {
      surroundings.progress("");
      surroundings.print(
          format.isJson()
              ? SeriesJson.of(end, options.ratedMillis())
              : SeriesText.of(end, request.claim()));
    }
    return farewell(end, request).number();
  }

  private SeriesEnd runSeries(SeriesRequest request) {
    Series series = Series.of(request);
    if (request.instrument() instanceof InstrumentChoice.Simulated simulated) {
      surroundings.progress(
          "simulated bench: unit %s, seed %d", simulated.unit(), simulated.seed());
    } else {
      EnterKey.listen(surroundings.terminal().in(), series::proceed);
    }
    return series.run(new SeriesProgress(surroundings, request), surroundings.stop());
  }

  private ExitCode farewell(SeriesEnd end, SeriesRequest request) {
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
                  + " Mains is left as it is. The unit's output may still be live from its"
                  + " battery."));
    }
    return SeriesExit.of(end, request.claim() != null);
  }

  private static String bulleted() {
    StringBuilder text = new StringBuilder("Before you probe or switch mains:\n");
    Cautions.list().forEach(line -> text.append(TextWrap.hanging("  - ", line)).append('\n'));
    return text.append('\n').toString();
  }
}

package mainsgap.cli;

import java.util.concurrent.Callable;
import mainsgap.bench.Cautions;
import mainsgap.bench.CheckEnd;
import mainsgap.bench.Discovery;
import mainsgap.bench.DiscoveryEnd;
import mainsgap.bench.FoundInstrument;
import mainsgap.bench.InstrumentCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** What instruments there are, and whether one of them can be used. */
@Command(
    name = "instruments",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description = {
      "Lists the instruments that can be found: those that announce themselves on the network"
          + " (DNS-SD), the USBTMC instruments and the serial ports of this computer. Nothing is sent"
          + " to any of them: names and models are what they announce. With --identify each is asked"
          + " who it is (*IDN?), and nothing else. A serial port may lead to anything, such as a"
          + " relay: none is opened unless --identify-serial says so.",
      "",
      "--probe and --try check a single instrument before a series."
    },
    footer = {
      "",
      "Examples:",
      "  mainsgap instruments",
      "  mainsgap instruments --identify --broadcast --format json",
      "  mainsgap instruments --probe TCPIP::192.168.1.20::5025::SOCKET",
      "  mainsgap instruments --try ten-field-preamble --instrument ASRL/dev/ttyUSB0::INSTR \\",
      "      --rig my-rig.toml --cautions-read --record talk.txt",
      "",
      "Where an instrument has several links, the first one listed is the one to try first.",
      "Exit codes: 0 an instrument is there, a profile fits, the try is through; 2 wrong use;",
      "3 nothing found (a serial port alone is no instrument), or no profile fits; 4 the instrument",
      "or its link failed; 5 the conversation file is not whole; 130 stopped."
    })
final class InstrumentsCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private DiscoveryOptions discovery = new DiscoveryOptions();

  @Mixin private CheckOptions check = new CheckOptions();

  @Mixin private OutputFormat format = new OutputFormat();

  InstrumentsCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    check.requireThatTheyFit(discovery.given());
    return (check.isWanted() ? checked() : discovered()).number();
  }

  private ExitCode discovered() {
    DiscoveryEnd end =
        Discovery.of(discovery.request())
            .run(sentence -> surroundings.progress("%s", sentence), surroundings.stop());
    switch (end.kind()) {
      case WRONG_USE -> {
        end.notes().forEach(surroundings.terminal()::complain);
        return ExitCode.WRONG_USE;
      }
      case STOPPED -> {
        surroundings.terminal().complain("stopped by the user");
        return ExitCode.STOPPED;
      }
      case COMPLETE -> {
        end.notes().forEach(note -> surroundings.progress("%s", TextWrap.paragraph(note)));
        surroundings.print(format.isJson() ? DiscoveryJson.of(end) : DiscoveryText.of(end));
      }
    }
    if (end.instruments().stream().anyMatch(FoundInstrument::isThere)) {
      return ExitCode.DONE;
    }
    surroundings
        .terminal()
        .complain(
            "no instrument was found: switch on its control over the network, try --broadcast, or"
                + " name it with --probe RESOURCE");
    return ExitCode.NOTHING_MEASURED;
  }

  private ExitCode checked() {
    if (check.isTry()) {
      surroundings.terminal().err().print(CautionsText.bulleted(Cautions.list()));
      if (!check.areCautionsRead()) {
        surroundings
            .terminal()
            .complain(
                "nothing was sent: a try arms the instrument on what is connected; read the"
                    + " cautions above, then add --cautions-read to say so");
        return ExitCode.WRONG_USE;
      }
    }
    CheckEnd end =
        InstrumentCheck.run(check.request(), new CheckProgress(surroundings), surroundings.stop());
    if (end.kind() != CheckEnd.Kind.WRONG_USE) {
      surroundings.print(format.isJson() ? CheckJson.of(end) : CheckText.of(end));
    }
    return farewell(end);
  }

  private ExitCode farewell(CheckEnd end) {
    if (!end.sentence().isEmpty()) {
      surroundings.terminal().complain(end.sentence());
    }
    if (!end.recordComplaint().isEmpty()) {
      surroundings.terminal().complain(end.recordComplaint());
    }
    return switch (end.kind()) {
      case COMPLETE -> end.recordComplaint().isEmpty() ? ExitCode.DONE : ExitCode.SESSION_FAILED;
      case NO_PROFILE -> ExitCode.NOTHING_MEASURED;
      case WRONG_USE -> ExitCode.WRONG_USE;
      case INSTRUMENT_FAILED -> ExitCode.INSTRUMENT_FAILED;
      case STOPPED -> ExitCode.STOPPED;
    };
  }
}

package mainsgap.cli;

import java.nio.file.Path;
import mainsgap.bench.CatchWish;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.RigSheet;
import mainsgap.bench.SeriesPlan;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.bench.SimulatedUnits;
import mainsgap.settings.SettingsException;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** The options of a series, and the request that they make. */
final class SeriesOptions {
  private static final int DEFAULT_TRIALS = 10;
  private static final RigSheet.Wish NO_WISH = new RigSheet.Wish(null, null, null);

  @Option(
      names = "--instrument",
      paramLabel = "RESOURCE",
      description =
          "A real instrument by its resource name, such as TCPIP::HOST::5025::SOCKET. Needs --rig"
              + " and --cautions-read.")
  private @Nullable String resource;

  @Option(
      names = "--simulated",
      paramLabel = "UNIT",
      arity = "0..1",
      converter = UnitWord.class,
      completionCandidates = UnitWord.class,
      fallbackValue = SimulatedUnits.DEFAULT,
      description =
          "The built-in simulated bench and one of its invented units (default: "
              + SimulatedUnits.DEFAULT
              + "): ${COMPLETION-CANDIDATES}.")
  private @Nullable String simulatedUnit;

  @Option(
      names = "--trials",
      paramLabel = "N",
      description = "Trials to be measured (default: " + DEFAULT_TRIALS + ").")
  private @Nullable Integer trials;

  @Mixin private SupplyOptions supply = new SupplyOptions();

  @Option(
      names = "--unit",
      paramLabel = "NAME",
      description = "The specimen's name, for the session and the report.")
  private @Nullable String unit;

  @Option(
      names = "--session",
      paramLabel = "FILE",
      description =
          "Session file to make (default: a new one in your data folder; its path is"
              + " printed).")
  private @Nullable Path session;

  @Option(
      names = "--continue",
      description = "Go on with the existing session that --session names.")
  private boolean goOn;

  @Option(
      names = "--rig",
      paramLabel = "FILE",
      description =
          "Rig file (TOML): channels, probe factors and ratings, unit, load, conditions; where"
              + " this command line and the plan say nothing, instrument, claim and trials too.")
  private @Nullable Path rig;

  @Option(
      names = "--plan",
      paramLabel = "FILE",
      description =
          "Plan of the series (TOML): trials, event, waits, random delay or angles of a commanded"
              + " switch. An option that is given goes before the plan, the plan before the rig"
              + " file.")
  private @Nullable Path planFile;

  @Option(
      names = "--dry-run",
      description = "Tell what would be done, step by step; nothing is opened, armed or switched.")
  private boolean dryRun;

  @Option(
      names = "--cautions-read",
      description = "You have read the cautions that this command prints; logged with the session.")
  private boolean cautionsRead;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "With --simulated: the same seed gives the same series.")
  private @Nullable Long seed;

  @Option(
      names = "--catch",
      paramLabel = "HOW",
      converter = CatchWord.class,
      completionCandidates = CatchWord.class,
      description =
          "How the event gets into the record (default: automatic, the surest way that instrument"
              + " and rig allow): ${COMPLETION-CANDIDATES}. 'record' is one long record inside which"
              + " mains is switched; the others are triggers, and what each can miss is printed"
              + " before anything is armed.")
  private @Nullable CatchWish catching;

  @Option(
      names = "--settle",
      paramLabel = "TIME",
      converter = Milliseconds.Converter.class,
      description = "How long the unit settles between trials once mains is back, such as 10s.")
  private @Nullable Milliseconds settle;

  @Option(
      names = "--trigger-wait",
      paramLabel = "TIME",
      converter = Milliseconds.Converter.class,
      description =
          "How long the armed instrument waits for the switch (default: 60s, for a restoration 360s).")
  private @Nullable Milliseconds triggerWait;

  /** Whether the series is only to be told. */
  boolean isDryRun() {
    return dryRun;
  }

  boolean areCautionsRead() {
    return cautionsRead;
  }

  /**
   * The request, once the options fit together; what they leave open, the plan says, and then the
   * rig.
   */
  SeriesRequest request(long seedIfNone) {
    SeriesPlan plan = plan();
    RigSheet sheet = sheet();
    RigSheet.Wish wish = sheet == null ? NO_WISH : sheet.wish();
    DeclaredClaim ofTheRig = sheet == null ? null : sheet.claim();
    int trials = trials(plan.trials() == null ? wish.trials() : plan.trials());
    if (triggerWait != null && triggerWait.toDuration().isZero()) {
      throw supply.wrong("--trigger-wait is a time above 0, found " + triggerWait.asTyped());
    }
    if (session != null && session.toString().isEmpty()) {
      throw supply.wrong("--session names no file: write its path, or leave the option out");
    }
    if (goOn && session == null) {
      throw supply.wrong("--continue needs the session that goes on: add --session FILE");
    }
    return new SeriesRequest(
        instrument(sheet, seedIfNone),
        unit,
        supply.claim() == null ? ofTheRig : supply.claim(),
        supply.rule(ofTheRig),
        supply.eventOr(plan.event() == null ? wish.event() : plan.event()),
        supply.nominalVolts(),
        supply.frequencyHertz(),
        trials,
        new SessionPlace(session, goOn),
        rig,
        cautionsRead,
        catching(wish),
        plan,
        settle == null ? null : settle.toDuration(),
        triggerWait == null ? null : triggerWait.toDuration(),
        null);
  }

  private SeriesPlan plan() {
    try {
      return planFile == null ? SeriesPlan.NONE : SeriesPlan.read(planFile);
    } catch (SettingsException e) {
      throw supply.wrong(String.valueOf(e.getMessage()));
    }
  }

  private @Nullable RigSheet sheet() {
    try {
      return rig == null ? null : RigSheet.read(rig);
    } catch (SettingsException e) {
      throw supply.wrong(String.valueOf(e.getMessage()));
    }
  }

  private CatchWish catching(RigSheet.Wish wish) {
    if (catching != null) {
      return catching;
    }
    return wish.catching() == null ? CatchWish.AUTOMATIC : wish.catching();
  }

  private int trials(@Nullable Integer planned) {
    if (trials == null) {
      return planned == null ? DEFAULT_TRIALS : planned;
    }
    if (trials < 1 || trials > SeriesPlan.MOST_TRIALS) {
      throw supply.wrong("--trials is 1 to " + SeriesPlan.MOST_TRIALS + ", found " + trials);
    }
    return trials;
  }

  private InstrumentChoice instrument(@Nullable RigSheet sheet, long seedIfNone) {
    if (resource != null && simulatedUnit != null) {
      throw oneInstrument();
    }
    InstrumentChoice ofTheRig = sheet == null ? null : sheet.instrument().choice(seedIfNone);
    InstrumentChoice choice =
        resource != null
            ? new InstrumentChoice.Real(resource)
            : simulatedUnit != null
                ? new InstrumentChoice.Simulated(simulatedUnit, seedIfNone)
                : ofTheRig;
    if (choice == null) {
      throw oneInstrument();
    }
    if (seed == null) {
      return choice;
    }
    if (choice instanceof InstrumentChoice.Simulated simulated) {
      return new InstrumentChoice.Simulated(simulated.unit(), seed);
    }
    throw supply.wrong("--seed belongs to --simulated: a real instrument has no seed");
  }

  private ParameterException oneInstrument() {
    return supply.wrong(
        "a series needs one instrument: give --instrument RESOURCE, or --simulated for the built-in"
            + " bench");
  }
}

package mainsgap.bench;

import java.time.Duration;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import mainsgap.arming.Pace;
import mainsgap.arming.SwitchTiming;
import mainsgap.scope.CaptureRequest;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.EventSignal;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.simulation.SimulatedBench;
import mainsgap.transfer.DeclaredClaim;
import mainsgap.transfer.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * A request made whole: the user's words first, then the rig file's, then the defaults.
 *
 * @param request what was asked for
 * @param rig the rig file's content; null where there is none, on the simulated bench
 * @param unit the specimen's name
 * @param task what is measured
 * @param inputs the channel for each role
 * @param pace the limits of the waits
 * @param timing where on the wave a commanded switch opens
 */
record SeriesSetup(
    SeriesRequest request,
    @Nullable RigFile rig,
    String unit,
    MeasuringTask task,
    Map<ChannelRole, Input> inputs,
    Pace pace,
    SwitchTiming timing) {
  private static final int LONGEST_NAME = 1000;

  /** The simulated hand is quick, and the simulated unit needs no rest. */
  private static final Pace SIMULATED =
      new Pace(
          Duration.ofSeconds(20),
          Duration.ZERO,
          Duration.ZERO,
          Duration.ofSeconds(10),
          Duration.ofSeconds(10),
          Duration.ofMillis(5),
          5);

  /**
   * Puts the setup together.
   *
   * @throws BenchException with a sentence where something needed is missing
   * @throws mainsgap.settings.SettingsException where the rig file cannot be used
   */
  static SeriesSetup of(SeriesRequest request) {
    if (request.trials() < 1) {
      throw new BenchException("a series has at least 1 trial, found " + request.trials());
    }
    boolean real = request.instrument() instanceof InstrumentChoice.Real;
    if (real && request.rigFile() == null) {
      throw new BenchException(
          "a real instrument needs a rig file with channels, probe factors and probe ratings: write"
              + " one and name it with --rig FILE");
    }
    RigFile rig =
        request.rigFile() == null
            ? null
            : RigFile.read(request.rigFile(), request.nominalVolts(), SeriesRequest.DEFAULT_VOLTS);
    return new SeriesSetup(
        request,
        rig,
        unit(request, rig),
        task(request, rig),
        inputs(request, rig),
        pace(request, rig),
        timing(request, rig == null ? null : rig.mainsSwitch()));
  }

  /** The commanded mains switch; null where a hand moves it. */
  @Nullable RigSwitch mainsSwitch() {
    return rig == null ? null : rig.mainsSwitch();
  }

  /**
   * Returns where the user says so, or where there is no real instrument.
   *
   * @throws BenchException with a sentence, else
   */
  static void requireCautionsRead(SeriesRequest request) {
    if (request.instrument() instanceof InstrumentChoice.Real && !request.cautionsRead()) {
      throw new BenchException(
          "nothing is armed on a real instrument before the cautions are read: read them, then say"
              + " so with --cautions-read");
    }
  }

  boolean isReal() {
    return request.instrument() instanceof InstrumentChoice.Real;
  }

  /** The instrument profile to use; null to find the one that fits. */
  @Nullable String profile() {
    return rig == null ? null : rig.profile();
  }

  /** What the capture plan is made from. */
  CaptureRequest captureRequest() {
    DeclaredClaim claim = request.claim();
    return new CaptureRequest(
        request.event(),
        task.nominalVolts(),
        task.nominalFrequencyHertz(),
        claim == null ? null : (Double) (claim.millis() / 1e3),
        inputs,
        isReal() && mainsSwitch() == null,
        request.catching().method(),
        signals().marker(),
        signals().external(),
        longestCheckSeconds(request, rig));
  }

  private RigSignals signals() {
    return signals(request, rig);
  }

  private static RigSignals signals(SeriesRequest request, @Nullable RigFile rig) {
    return rig == null
        ? SimulatedSignals.wiredFor(request.event(), request.catching())
        : rig.signals();
  }

  private static double longestCheckSeconds(SeriesRequest request, @Nullable RigFile rig) {
    Double declared = rig == null ? null : rig.longestCheckSeconds();
    return request.instrument() instanceof InstrumentChoice.Simulated
        ? SimulatedSignals.LONGEST_CHECK_SECONDS
        : declared == null ? CaptureRequest.LONGEST_CHECK_SECONDS : declared;
  }

  /** The rig in words and values, for the session. */
  Map<String, String> rigWords() {
    Map<String, String> words = new LinkedHashMap<>();
    if (rig == null) {
      inputs.forEach(
          (role, input) ->
              words.put(
                  "channel " + input.channel(),
                  role.words() + ", probe factor " + Words.plain(input.probeFactor())));
    } else {
      rig.channels()
          .forEach(
              (role, channel) ->
                  words.put("channel " + channel.number(), channel.words(role.words())));
      EventSignal marker = rig.signals().marker();
      Input input = rig.signals().markerInput();
      if (marker != null && input != null) {
        words.put("channel " + input.channel(), "marker, " + marker.follows().words());
      }
    }
    RigSwitch commanded = mainsSwitch();
    words.put("mains switch", commanded == null ? "by hand" : commanded.words());
    if (commanded != null) {
      words.put("switch timing", SwitchTimingWords.of(timing));
    }
    words.put("settling time", Words.plain(pace.settle().toMillis() / 1e3) + " s");
    return words;
  }

  /** The conditions in words, for the session. */
  Map<String, String> conditionWords() {
    if (rig != null) {
      return rig.conditions();
    }
    return request.instrument() instanceof InstrumentChoice.Simulated simulated
        ? Map.of("seed", Long.toString(simulated.seed()))
        : Map.of();
  }

  private static String unit(SeriesRequest request, @Nullable RigFile rig) {
    if (request.unit() != null && !request.unit().isBlank()) {
      return printable(request.unit());
    }
    if (rig != null && rig.unit() != null) {
      return rig.unit();
    }
    if (request.instrument() instanceof InstrumentChoice.Simulated simulated) {
      return "simulated " + simulated.unit();
    }
    throw new BenchException(
        "the unit has no name: give --unit NAME, or write name under [unit] in the rig file");
  }

  private static String printable(String unit) {
    if (unit.length() > LONGEST_NAME || unit.chars().anyMatch(Character::isISOControl)) {
      throw new BenchException(
          "the unit's name is one plain line of at most "
              + LONGEST_NAME
              + " characters: choose another");
    }
    return unit;
  }

  private static MeasuringTask task(SeriesRequest request, @Nullable RigFile rig) {
    Double volts = request.nominalVolts();
    Double hertz = request.frequencyHertz();
    if (rig != null) {
      volts = volts == null ? rig.nominalVolts() : volts;
      hertz = hertz == null ? rig.frequencyHertz() : hertz;
    }
    try {
      return new MeasuringTask(
          request.event(),
          volts == null ? SeriesRequest.DEFAULT_VOLTS : volts,
          hertz == null ? SeriesRequest.DEFAULT_HERTZ : hertz);
    } catch (IllegalArgumentException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  private static Map<ChannelRole, Input> inputs(SeriesRequest request, @Nullable RigFile rig) {
    Map<ChannelRole, Input> inputs = new EnumMap<>(ChannelRole.class);
    Input marker = signals(request, rig).markerInput();
    if (marker != null) {
      inputs.put(ChannelRole.MARKER, marker);
    }
    if (rig == null) {
      inputs.put(ChannelRole.OUTPUT, Input.ofSupply(1, SimulatedBench.PROBE_FACTOR));
      inputs.put(ChannelRole.MAINS, Input.ofSupply(2, SimulatedBench.PROBE_FACTOR));
      return inputs;
    }
    rig.channels()
        .forEach(
            (role, channel) ->
                inputs.put(role, Input.ofSupply(channel.number(), channel.probeFactor())));
    return inputs;
  }

  private static Pace pace(SeriesRequest request, @Nullable RigFile rig) {
    boolean real = request.instrument() instanceof InstrumentChoice.Real;
    Pace pace = real ? Pace.AT_A_BENCH : SIMULATED;
    Duration settle = pace.settle();
    if (rig != null && rig.settleSeconds() != null) {
      settle = Duration.ofMillis(Math.round(1e3 * rig.settleSeconds()));
    }
    SeriesPlan plan = request.plan();
    Duration triggerWait =
        real && request.event() == Event.RESTORATION
            ? Pace.TRIGGER_WAIT_FOR_LOSS.plusMillis(
                Math.round(1e3 * longestCheckSeconds(request, rig)))
            : pace.triggerWait();
    try {
      return new Pace(
          first(request.triggerWait(), plan.triggerWait(), triggerWait),
          first(request.settle(), plan.settle(), settle),
          first(null, plan.pause(), pace.pause()),
          pace.recoveryWait(),
          pace.consentWait(),
          pace.poll(),
          first(request.maxRepeats(), plan.repeats(), pace.maxRepeats()));
    } catch (IllegalArgumentException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  private static SwitchTiming timing(SeriesRequest request, @Nullable RigSwitch commanded) {
    SeriesPlan plan = request.plan();
    boolean asksForTiming = plan.randomCycles() != null || !plan.anglesDegrees().isEmpty();
    if (commanded == null) {
      if (asksForTiming) {
        throw new BenchException(
            "the plan says when the mains switch opens on the wave, but a hand moves it: the angle"
                + " is measured, not chosen; take [switching] out of the plan, or name a commanded"
                + " switch in the rig file");
      }
      return SwitchTiming.BY_HAND;
    }
    if (!plan.anglesDegrees().isEmpty()) {
      if (!commanded.choosesAngle()) {
        throw new BenchException(
            "the plan fixes the angles at which mains opens, but this mains switch opens when it"
                + " can: the angle is measured, not chosen; use random-delay-cycles, or an AC source"
                + " or a turn-off electronic switch whose data have a command with {angle}");
      }
      return new SwitchTiming(0, plan.anglesDegrees(), 0);
    }
    Integer cycles = plan.randomCycles();
    return new SwitchTiming(cycles == null ? 1 : cycles, List.of(), seed(request));
  }

  /** What is drawn here is kept with the session. */
  private static long seed(SeriesRequest request) {
    Integer planned = request.plan().randomSeed();
    if (planned != null) {
      return planned;
    }
    return request.instrument() instanceof InstrumentChoice.Simulated simulated
        ? simulated.seed()
        : new SplittableRandom().nextInt(SeriesPlan.HIGHEST_SEED);
  }

  private static <T> T first(@Nullable T asked, @Nullable T planned, T otherwise) {
    if (asked != null) {
      return asked;
    }
    return planned == null ? otherwise : planned;
  }
}

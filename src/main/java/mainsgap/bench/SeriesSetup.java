package mainsgap.bench;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.arming.Pace;
import mainsgap.arming.SwitchTiming;
import mainsgap.scope.CaptureRequest;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.EventSignal;
import mainsgap.signal.ChannelRole;
import mainsgap.simulation.SimulatedBench;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
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
        SeriesPace.of(request, rig),
        SeriesTiming.of(request, rig == null ? null : rig.mainsSwitch()));
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
        SeriesPace.longestCheckSeconds(request, rig));
  }

  private RigSignals signals() {
    return signals(request, rig);
  }

  private static RigSignals signals(SeriesRequest request, @Nullable RigFile rig) {
    return rig == null
        ? SimulatedSignals.wiredFor(request.event(), request.catching())
        : rig.signals();
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
      ClampedChannel clamped = rig.sheet().loadCurrent();
      if (clamped != null) {
        words.put("channel " + clamped.number(), clamped.words(ChannelRole.LOAD_CURRENT.words()));
      }
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
    Map<String, String> words = new LinkedHashMap<>();
    if (rig != null) {
      words.putAll(rig.conditions());
    }
    if (request.instrument() instanceof InstrumentChoice.Simulated simulated) {
      words.put("seed", Long.toString(simulated.seed()));
    }
    return words;
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
    ClampedChannel clamped = rig.sheet().loadCurrent();
    if (clamped != null) {
      inputs.put(ChannelRole.LOAD_CURRENT, clamped.input());
    }
    return inputs;
  }
}

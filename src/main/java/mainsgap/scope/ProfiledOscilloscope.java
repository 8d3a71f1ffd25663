package mainsgap.scope;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.scope.CapturePlan.ChannelPlan;
import mainsgap.scope.WaveformReader.Reading;
import mainsgap.scpi.Identity;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** An oscilloscope that a profile describes. One thread owns it. */
final class ProfiledOscilloscope implements Oscilloscope {
  private static final Logger LOG = LoggerFactory.getLogger(ProfiledOscilloscope.class);

  /** For a look beyond its own duration: instruments copy and settle. */
  private static final Duration LOOK_PATIENCE = Duration.ofSeconds(10);

  private final InstrumentProfile profile;
  private final Identity identity;
  private final Clock clock;
  private final Pauses pauses;
  private final Exchange exchange;
  private final ScopeSettings settings;
  private final StateReading stateReading;
  private final WaveformReader waveforms;
  private @Nullable Configured configured;
  private @Nullable AppliedRecord current;
  private @Nullable Acquisition acquisition;
  private @Nullable Deadline filled;

  /** A plan, and what the instrument made of it. */
  private record Configured(
      CapturePlan plan, Map<ChannelRole, Double> rangesPeakVolts, AppliedRecord record) {}

  ProfiledOscilloscope(
      Exchange exchange,
      InstrumentProfile profile,
      Identity identity,
      Clock clock,
      StopRequest stop) {
    this.profile = profile;
    this.identity = identity;
    this.pauses = new Pauses(clock, stop);
    this.clock = clock;
    this.exchange = exchange;
    this.settings = new ScopeSettings(exchange, profile);
    this.stateReading = new StateReading(exchange, profile.state());
    this.waveforms = new WaveformReader(exchange, profile, pauses);
  }

  /** Clears old complaints and sends what the profile wants at the start. */
  void connect() {
    exchange.clearStatus("connecting");
    exchange.send("connecting", profile.commands().connect(), Map.of());
  }

  @Override
  public Identity identity() {
    return identity;
  }

  @Override
  public ScopeLimits limits() {
    return profile.limits();
  }

  @Override
  public void configure(CapturePlan plan) {
    configured = null;
    current = null;
    disarm();
    settings.sendChannels(plan);
    AppliedRecord wished = settings.offered(AppliedRecord.of(plan));
    settings.sendTrigger(plan);
    settings.sendRecord(wished);
    settle();
    Map<ChannelRole, Double> ranges = settings.rangesPeakVolts(plan);
    AppliedRecord record = settings.readRecord(wished);
    exchange.checkErrors("reading back the settings");
    configured = new Configured(plan, ranges, record);
    current = record;
  }

  @Override
  public Capture look() {
    Configured setting = configured();
    AppliedRecord wished = settings.offered(AppliedRecord.forLook(limits()));
    settings.sendForcedTrigger(setting.plan());
    settings.sendRecord(wished);
    settle();
    current = settings.readRecord(wished);
    start(true);
    awaitLook(current);
    return read();
  }

  @Override
  public void arm() {
    Configured setting = configured();
    if (!setting.record().equals(current)) {
      AppliedRecord wished = settings.offered(AppliedRecord.of(setting.plan()));
      settings.sendTrigger(setting.plan());
      settings.sendRecord(wished);
      settle();
      current = settings.readRecord(wished);
    }
    start(!setting.plan().method().isTriggered());
  }

  @Override
  public AcquisitionState state() {
    AcquisitionState polled = stateReading.ask();
    Acquisition running = acquisition;
    if (running == null) {
      return polled == AcquisitionState.COMPLETE ? AcquisitionState.IDLE : polled;
    }
    if (stateReading.completedSinceStart()) {
      running.hasRun();
    }
    if (running.takeForce(polled)) {
      exchange.send("forcing the trigger", profile.commands().force(), Map.of());
    }
    AcquisitionState state = running.means(polled);
    if (state == AcquisitionState.IDLE || state == AcquisitionState.COMPLETE) {
      exchange.checkErrors("acquiring");
    }
    return state == AcquisitionState.WATCHING && isFilling() ? AcquisitionState.FILLING : state;
  }

  /** An instrument that doesn't tell when it has filled its pre-trigger part is given the time. */
  private boolean isFilling() {
    return !profile.state().tellsFilling() && filled != null && !filled.hasPassed();
  }

  @Override
  public Capture read() {
    CapturePlan plan = configured().plan();
    AppliedRecord record = record();
    waveforms.begin();
    Map<ChannelRole, Waveform> taken = new EnumMap<>(ChannelRole.class);
    TimeAxis time = null;
    for (Map.Entry<ChannelRole, ChannelPlan> entry : plan.channels().entrySet()) {
      Reading reading = waveforms.read(channel(entry.getKey(), entry.getValue()), record);
      time = time == null ? record.checked(reading.time()) : time;
      taken.put(entry.getKey(), reading.waveform());
    }
    exchange.checkErrors("reading the record");
    if (time == null) {
      throw new AssertionError("a plan has the output channel");
    }
    return new Capture(time, taken);
  }

  @Override
  public void disarm() {
    acquisition = null;
    exchange.send("stopping the acquisition", profile.commands().disarm(), Map.of());
  }

  @Override
  public void close() {
    try {
      disarm();
    } catch (ScopeException e) {
      LOG.warn("{} could not be disarmed: {}", identity, e.getMessage());
    } finally {
      exchange.close();
    }
  }

  private WaveformReader.Channel channel(ChannelRole role, ChannelPlan plan) {
    Double range = configured().rangesPeakVolts().get(role);
    return new WaveformReader.Channel(
        plan.number(), plan.probeFactor(), range == null ? plan.fullScalePeakVolts() : range);
  }

  private void start(boolean forcedRecord) {
    stateReading.begin();
    exchange.send("starting the acquisition", profile.commands().arm(), Map.of());
    List<CommandTemplate> force = profile.commands().force();
    acquisition = new Acquisition(forcedRecord, !force.isEmpty());
    double fillSeconds = forcedRecord ? 0 : Math.max(0, -record().firstSampleSeconds());
    filled = Deadline.after(Duration.ofNanos((long) (fillSeconds * 1e9)), clock);
  }

  private void awaitLook(AppliedRecord record) {
    Duration recording = Duration.ofNanos((long) (record.durationSeconds() * 1e9));
    Duration patience = LOOK_PATIENCE.plus(recording);
    AcquisitionState[] state = {AcquisitionState.IDLE};
    boolean complete =
        pauses.until(
            patience,
            profile.timing().poll(),
            () -> {
              state[0] = state();
              return state[0] == AcquisitionState.COMPLETE;
            });
    if (!complete) {
      disarm();
      throw new ScopeException(
          "no look at the live signal within "
              + patience.toSeconds()
              + " s, the instrument says '"
              + state[0].name().toLowerCase(Locale.ROOT)
              + "': check its screen, and that the profile fits it");
    }
  }

  private void settle() {
    pauses.pause(profile.timing().settle());
    profile
        .timing()
        .settled()
        .ifPresent(
            query -> {
              String answer = exchange.ask("waiting for the settings", query, Map.of());
              LOG.debug("settled: {}", answer);
            });
  }

  private AppliedRecord record() {
    if (current == null) {
      throw new IllegalStateException("nothing was recorded");
    }
    return current;
  }

  private Configured configured() {
    if (configured == null) {
      throw new IllegalStateException("configure comes first");
    }
    return configured;
  }
}

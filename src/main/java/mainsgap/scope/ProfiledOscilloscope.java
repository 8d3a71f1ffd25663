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
  private final StopRequest stop;
  private final Exchange exchange;
  private final ScopeSettings settings;
  private final StateReading stateReading;
  private final WaveformReader waveforms;
  private @Nullable Configured configured;
  private @Nullable AppliedRecord current;
  private @Nullable Acquisition acquisition;

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
    this.clock = clock;
    this.stop = stop;
    this.exchange = exchange;
    this.settings = new ScopeSettings(exchange, profile);
    this.stateReading = new StateReading(exchange, profile.state());
    this.waveforms = new WaveformReader(exchange, profile);
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
    AppliedRecord wished = AppliedRecord.of(plan);
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
    AppliedRecord wished = AppliedRecord.forLook(limits());
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
      AppliedRecord wished = AppliedRecord.of(setting.plan());
      settings.sendTrigger(setting.plan());
      settings.sendRecord(wished);
      settle();
      current = settings.readRecord(wished);
    }
    start(setting.plan().method() == CatchMethod.FORCED_RECORD);
  }

  @Override
  public AcquisitionState state() {
    AcquisitionState polled = stateReading.ask();
    Acquisition running = acquisition;
    if (running == null) {
      return polled == AcquisitionState.COMPLETE ? AcquisitionState.IDLE : polled;
    }
    if (running.takeForce(polled)) {
      exchange.send("forcing the trigger", profile.commands().force(), Map.of());
    }
    AcquisitionState state = running.means(polled);
    if (state == AcquisitionState.IDLE || state == AcquisitionState.COMPLETE) {
      exchange.checkErrors("acquiring");
    }
    return state;
  }

  @Override
  public Capture read() {
    CapturePlan plan = configured().plan();
    AppliedRecord record = current;
    if (record == null) {
      throw new IllegalStateException("nothing was recorded");
    }
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
    exchange.send("starting the acquisition", profile.commands().arm(), Map.of());
    List<CommandTemplate> force = profile.commands().force();
    acquisition = new Acquisition(forcedRecord, !force.isEmpty());
  }

  private void awaitLook(AppliedRecord record) {
    Duration recording = Duration.ofNanos((long) (record.durationSeconds() * 1e9));
    Deadline deadline = Deadline.after(LOOK_PATIENCE.plus(recording), clock);
    AcquisitionState state = state();
    while (state != AcquisitionState.COMPLETE) {
      if (deadline.hasPassed()) {
        disarm();
        throw new ScopeException(
            "no look at the live signal within "
                + LOOK_PATIENCE.plus(recording).toSeconds()
                + " s, the instrument says '"
                + state.name().toLowerCase(Locale.ROOT)
                + "': check its screen, and that the profile fits it");
      }
      clock.pause(profile.timing().poll(), stop);
      state = state();
    }
  }

  private void settle() {
    if (!profile.timing().settle().isZero()) {
      clock.pause(profile.timing().settle(), stop);
    }
  }

  private Configured configured() {
    if (configured == null) {
      throw new IllegalStateException("configure comes first");
    }
    return configured;
  }
}

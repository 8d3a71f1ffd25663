package mainsgap.bench;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import mainsgap.bench.CheckEnd.Kind;
import mainsgap.link.ConversationFile;
import mainsgap.link.LinkException;
import mainsgap.link.LinkOpener;
import mainsgap.link.ResourceName;
import mainsgap.scope.CaptureRequest.Input;
import mainsgap.scope.CaptureWalk;
import mainsgap.scope.InstrumentAccess;
import mainsgap.scope.InstrumentProfile;
import mainsgap.scope.InstrumentProfiles;
import mainsgap.scope.Oscilloscopes;
import mainsgap.scope.ScopeException;
import mainsgap.settings.SettingsException;
import mainsgap.signal.ChannelRole;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;

/**
 * Checks one instrument: which profile fits it, and whether a whole capture works with a profile.
 * Run it once; the thread that runs it owns the instrument.
 */
public final class InstrumentCheck {
  /** Where the rig file does not say; only ranges depend on it. */
  private static final double NOMINAL_VOLTS = 230;

  private final CheckRequest request;
  private final CheckListener listener;
  private final StopRequest stop;
  private final Clock clock = Clock.system();
  private final List<WalkedMessage> messages = new ArrayList<>();
  private final List<SeenChannel> seen = new ArrayList<>();
  private @Nullable ProbeFindings findings;
  private String recordComplaint = "";

  private InstrumentCheck(CheckRequest request, CheckListener listener, StopRequest stop) {
    this.request = request;
    this.listener = listener;
    this.stop = stop;
  }

  /** What the user asked for, once it can be. */
  private record Wanted(
      ResourceName resource,
      InstrumentProfiles profiles,
      @Nullable InstrumentProfile profile,
      CaptureWalk.@Nullable Connected connected) {}

  /** Runs the check to its end; every expected end is a value. */
  public static CheckEnd run(CheckRequest request, CheckListener listener, StopRequest stop) {
    return new InstrumentCheck(request, listener, stop).run();
  }

  private CheckEnd run() {
    Wanted wanted;
    try {
      wanted = wanted();
    } catch (BenchException | SettingsException | ScopeException | LinkException e) {
      return end(Kind.WRONG_USE, e);
    }
    if (request.record() == null) {
      return checked(wanted, LinkOpener.PLAIN, null);
    }
    ConversationFile file;
    try {
      file =
          ConversationFile.create(
              request.record(), "written by Mainsgap " + ProgramVersion.get(), clock);
    } catch (LinkException e) {
      return end(Kind.WRONG_USE, e);
    }
    CheckEnd end = checked(wanted, file, file);
    file.close();
    recordComplaint = file.complaint().orElse("");
    return end(end.kind(), end.sentence());
  }

  private CheckEnd checked(Wanted wanted, LinkOpener links, @Nullable ConversationFile file) {
    InstrumentAccess access = new InstrumentAccess(wanted.resource(), links, clock, stop);
    try {
      if (request.probe()) {
        remark(file, "which profile fits " + wanted.resource());
        findings =
            ProbeFindings.of(
                Oscilloscopes.probe(
                    access, wanted.profiles(), step -> listener.asked(ProbedQuestion.of(step))));
      }
      if (wanted.profile() != null) {
        remark(file, "a whole capture with the profile " + wanted.profile().name());
        walk(access, wanted.profile(), wanted.connected());
      } else if (findings != null && !findings.isKnown()) {
        return end(Kind.NO_PROFILE, findings.sentence());
      }
      return end(Kind.COMPLETE, "");
    } catch (ScopeException e) {
      return end(Kind.INSTRUMENT_FAILED, e);
    } catch (StoppedException e) {
      return end(Kind.STOPPED, e);
    }
  }

  private void remark(@Nullable ConversationFile file, String words) {
    listener.begun(words);
    if (file != null) {
      file.remark(words);
    }
  }

  private void walk(
      InstrumentAccess access,
      InstrumentProfile profile,
      CaptureWalk.@Nullable Connected connected) {
    CaptureWalk.Walked walked =
        CaptureWalk.walk(
            access,
            profile,
            connected,
            step -> {
              WalkedMessage message = WalkedMessage.of(step);
              messages.add(message);
              listener.walked(message);
            });
    walked
        .capture()
        .waveforms()
        .keySet()
        .forEach(role -> seen.add(SeenChannel.of(role, walked.capture())));
  }

  private Wanted wanted() {
    InstrumentProfiles profiles = InstrumentProfiles.load(ProfileFolder.find());
    return new Wanted(
        ResourceName.parse(request.resource()),
        profiles,
        request.profile() == null ? null : profiles.named(request.profile()),
        connected());
  }

  private CaptureWalk.@Nullable Connected connected() {
    if (request.rig() == null) {
      return null;
    }
    RigFile rig = RigFile.read(request.rig(), null, NOMINAL_VOLTS);
    Map<ChannelRole, Input> inputs = new EnumMap<>(ChannelRole.class);
    rig.channels()
        .forEach(
            (role, channel) ->
                inputs.put(role, Input.ofSupply(channel.number(), channel.probeFactor())));
    return new CaptureWalk.Connected(
        inputs, rig.nominalVolts() == null ? NOMINAL_VOLTS : rig.nominalVolts());
  }

  private CheckEnd end(Kind kind, RuntimeException why) {
    return end(kind, String.valueOf(why.getMessage()));
  }

  private CheckEnd end(Kind kind, String sentence) {
    return new CheckEnd(kind, Words.printable(sentence), findings, messages, seen, recordComplaint);
  }
}

package mainsgap.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import mainsgap.bench.CheckRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a single instrument is checked for. */
final class CheckOptions {
  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec command;

  @Option(
      names = "--probe",
      paramLabel = "RESOURCE",
      description =
          "Asks one instrument the questions by which the profiles know their families, which change"
              + " nothing, and shows what each gave and which profile fits, or why not.")
  private @Nullable String probed;

  @Option(
      names = "--try",
      paramLabel = "PROFILE",
      description =
          "Walks once through a whole capture and explains every message: sets channels and time"
              + " base, forces one short record of whatever is connected, reads it and disarms. No"
              + " switch is moved. The instrument's settings change. Needs --instrument or --probe,"
              + " and --cautions-read.")
  private @Nullable String profile;

  @Option(
      names = "--instrument",
      paramLabel = "RESOURCE",
      description = "The instrument to try the profile on, without a probe before it.")
  private @Nullable String resource;

  @Option(
      names = "--rig",
      paramLabel = "FILE",
      description =
          "With --try: rig file (TOML) with channels and probe factors (default: channel 1, probe"
              + " factor 1, nearly the largest range).")
  private @Nullable Path rig;

  @Option(
      names = "--cautions-read",
      description =
          "With --try: you have read the cautions that this command prints. They are asked for at"
              + " every address: behind one of this computer, too, may be a real instrument.")
  private boolean cautionsRead;

  @Option(
      names = "--record",
      paramLabel = "FILE",
      description =
          "With --probe or --try: writes the conversation into a new file, message by message.")
  private @Nullable Path record;

  /** Whether a single instrument is meant. */
  boolean isWanted() {
    return probed != null || profile != null;
  }

  /** Whether it is to be armed. */
  boolean isTry() {
    return profile != null;
  }

  boolean areCautionsRead() {
    return cautionsRead;
  }

  /** Refuses options that do not go together; {@code ofDiscovery} are those for looking around. */
  void requireThatTheyFit(List<String> ofDiscovery) {
    if (isWanted() && !ofDiscovery.isEmpty()) {
      throw wrong(
          ofDiscovery.get(0)
              + " is for looking around: leave it out with "
              + (probed == null ? "--try" : "--probe"));
    }
    if (profile != null && (probed == null) == (resource == null)) {
      throw wrong(
          "--try needs one instrument: give --instrument RESOURCE, or --probe RESOURCE to probe it"
              + " first");
    }
    if (profile == null && resource != null) {
      throw wrong("--instrument belongs to --try PROFILE; to find the profile: --probe RESOURCE");
    }
    if (profile == null && rig != null) {
      throw wrong("--rig belongs to --try PROFILE: nothing else looks at the channels");
    }
    if (profile == null && cautionsRead) {
      throw wrong("--cautions-read belongs to --try PROFILE: nothing else arms an instrument");
    }
    if (!isWanted() && record != null) {
      throw wrong(
          "--record needs --probe RESOURCE or --try PROFILE: there is no conversation else");
    }
  }

  /** The request, once the options fit together. */
  CheckRequest request() {
    String where = Objects.requireNonNull(probed == null ? resource : probed);
    return new CheckRequest(where, probed != null, profile, rig, record);
  }

  private ParameterException wrong(String sentence) {
    return new ParameterException(Objects.requireNonNull(command).commandLine(), sentence);
  }
}

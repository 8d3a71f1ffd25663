package mainsgap.bench;

import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/**
 * A rig file as its owner wrote it, to be shown, changed and written again; what is null is not
 * said there. {@code src/docs/rig-file.md} tells the keys.
 *
 * @param instrument what a series runs on
 * @param unit the specimen
 * @param claim the declared transfer time
 * @param supply the mains, and the waits that the unit needs
 * @param channels what is connected to the roles that see a supply: output, mains, second leg
 * @param loadCurrent the channel that sees the load current
 * @param wish how many trials, of what, and how they are caught
 * @param load on the unit's output, in words
 * @param conditions the owner's own names and words
 * @param kept tables that are carried along word for word
 */
public record RigSheet(
    Instrument instrument,
    Unit unit,
    @Nullable DeclaredClaim claim,
    Supply supply,
    Map<ChannelRole, ProbedChannel> channels,
    @Nullable ClampedChannel loadCurrent,
    Wish wish,
    @Nullable String load,
    Map<String, String> conditions,
    Kept kept) {

  /**
   * What a series runs on: an instrument, or a unit of the simulated bench, or neither.
   *
   * @param resource the instrument's resource name
   * @param simulated one of {@link SimulatedUnits#names()}
   * @param seed of the simulated bench
   * @param profile the instrument profile to use, where none is to be found by itself
   */
  public record Instrument(
      @Nullable String resource,
      @Nullable String simulated,
      @Nullable Integer seed,
      @Nullable String profile) {

    /** The instrument; null where the file names none. */
    public @Nullable InstrumentChoice choice(long seedIfNone) {
      if (resource != null) {
        return new InstrumentChoice.Real(resource);
      }
      return simulated == null
          ? null
          : new InstrumentChoice.Simulated(simulated, seed == null ? seedIfNone : seed);
    }
  }

  /** The specimen. */
  public record Unit(@Nullable String name, @Nullable String serial, @Nullable String firmware) {}

  /**
   * The mains, and the waits that the unit needs.
   *
   * @param nominalVolts RMS
   * @param frequencyHertz nominal
   * @param lineToEarthVolts what a probe must stand; the nominal voltage where it is not said
   * @param settleSeconds how long the unit settles between trials
   * @param longestCheckSeconds how long the unit may check a mains that is back
   */
  public record Supply(
      @Nullable Double nominalVolts,
      @Nullable Double frequencyHertz,
      @Nullable Double lineToEarthVolts,
      @Nullable Double settleSeconds,
      @Nullable Double longestCheckSeconds) {}

  /** What is wanted of a series. */
  public record Wish(
      @Nullable Integer trials, @Nullable Event event, @Nullable CatchWish catching) {}

  /**
   * Tables as they are written, comments and all; empty where they are not there.
   *
   * @param mainsSwitch the table {@code mains-switch}
   * @param marker the table {@code channels.marker}
   * @param externalInput the table {@code external-input}
   * @param switchWords what moves the mains switch, for people
   * @param namesAnotherFile whether one of them names a file in the rig file's folder
   */
  public record Kept(
      String mainsSwitch,
      String marker,
      String externalInput,
      String switchWords,
      boolean namesAnotherFile) {
    /** Of a rig whose switch a hand moves, and that has no small signals. */
    public static final Kept NONE = new Kept("", "", "", "by hand", false);

    /** Whether the program moves the mains switch. */
    public boolean isSwitchCommanded() {
      return !switchWords.equals(NONE.switchWords);
    }
  }

  /** Takes its own copies. */
  public RigSheet {
    EnumMap<ChannelRole, ProbedChannel> copy = new EnumMap<>(ChannelRole.class);
    copy.putAll(channels);
    channels = Collections.unmodifiableMap(copy);
    conditions = Collections.unmodifiableMap(new LinkedHashMap<>(conditions));
  }

  /**
   * Reads the file. Whether its probes stand the line is for whoever runs it to refuse.
   *
   * @throws mainsgap.settings.SettingsException with file, line and key if it cannot be used
   */
  public static RigSheet read(Path file) {
    return RigSheetReader.of(file).sheet();
  }

  /**
   * Writes the file whole or not at all. Comments that stand outside of the kept tables are lost.
   *
   * @throws BenchException with a sentence if it cannot be written
   */
  public void write(Path file) {
    WholeFile.write(file, RigSheetWriter.text(this));
  }

  /** The largest voltage to earth that a probe must stand. */
  public double lineToEarthVolts(double nominalIfNone) {
    if (supply.lineToEarthVolts() != null) {
      return supply.lineToEarthVolts();
    }
    return supply.nominalVolts() == null ? nominalIfNone : supply.nominalVolts();
  }
}

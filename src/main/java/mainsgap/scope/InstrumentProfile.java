package mainsgap.scope;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What the program knows of a family of instruments: data from a file, no code. Immutable.
 *
 * <p>The format is described in {@code instrument-profiles/README.md}.
 */
public final class InstrumentProfile {
  private final String name;
  private final String about;
  private final Identification identification;
  private final ScopeLimits limits;
  private final Parts parts;

  InstrumentProfile(
      String name, String about, Identification identification, ScopeLimits limits, Parts parts) {
    this.name = name;
    this.about = about;
    this.identification = identification;
    this.limits = limits;
    this.parts = parts;
  }

  /** The name by which a user chooses it: the file's name without its ending. */
  public String name() {
    return name;
  }

  /** One line for people. */
  public String about() {
    return about;
  }

  /** What instruments of this family can do. */
  public ScopeLimits limits() {
    return limits;
  }

  Identification identification() {
    return identification;
  }

  Commands commands() {
    return parts.commands();
  }

  TriggerCommands triggers() {
    return parts.triggers();
  }

  ReadBacks readBacks() {
    return parts.readBacks();
  }

  StatePolling state() {
    return parts.state();
  }

  WaveformTransfer waveform() {
    return parts.waveform();
  }

  Conventions conventions() {
    return parts.conventions();
  }

  Timing timing() {
    return parts.timing();
  }

  /** What the driver works with. */
  record Parts(
      Commands commands,
      TriggerCommands triggers,
      ReadBacks readBacks,
      StatePolling state,
      WaveformTransfer waveform,
      Conventions conventions,
      Timing timing) {}

  /**
   * How an instrument of this family is known.
   *
   * @param pattern found in its answer to {@code *IDN?}; null for a family that has no name
   * @param probes queries that change nothing, and what their answers look like
   */
  record Identification(@Nullable Pattern pattern, List<Probe> probes) {}

  /** A query that changes nothing, and what the whole answer looks like. */
  record Probe(CommandTemplate query, Pattern reply) {}

  /**
   * What an instrument counts in.
   *
   * @param probeFactorTold whether it is told the probe factor and gives volts at the tip
   * @param verticalDivisions in its range; 0 where it has none
   * @param horizontalDivisions in its record; 0 where it has none
   * @param steps of its records
   */
  record Conventions(
      boolean probeFactorTold, int verticalDivisions, int horizontalDivisions, RecordSteps steps) {}

  /** What is sent at each step. */
  record Commands(
      List<CommandTemplate> connect,
      List<CommandTemplate> channelOn,
      List<CommandTemplate> channelOff,
      List<CommandTemplate> record,
      List<CommandTemplate> arm,
      List<CommandTemplate> force,
      List<CommandTemplate> disarm) {}

  /** What is asked after the settings. */
  record ReadBacks(
      Optional<ReadBack> range, Optional<ReadBack> samples, Optional<ReadBack> interval) {}

  /**
   * Waits that the family needs.
   *
   * @param settle after the settings, before anything is asked
   * @param settled a query that is answered once the settings have settled
   * @param poll between two questions for the state
   * @param gap between two messages
   */
  record Timing(Duration settle, Optional<CommandTemplate> settled, Duration poll, Duration gap) {}
}

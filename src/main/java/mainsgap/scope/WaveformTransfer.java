package mainsgap.scope;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * How a channel's record comes over the wire, and what its samples mean.
 *
 * @param fetching what to send, and how the samples come
 * @param rails the codes that are no voltages
 * @param describer finds out what the samples mean
 */
record WaveformTransfer(Fetching fetching, Rails rails, RecordDescriber describer) {

  /**
   * What to send for a record.
   *
   * @param before once for each record, before its first channel
   * @param select before a channel is read
   * @param preparation what the instrument must do before it hands out samples
   * @param window which part of the record to send; empty where it comes whole
   * @param data the query for the samples
   * @param chunkSamples the most samples at once
   * @param asText whether they come as numbers with commas between them, not as a block of bytes
   */
  record Fetching(
      List<CommandTemplate> before,
      List<CommandTemplate> select,
      Optional<Preparation> preparation,
      List<CommandTemplate> window,
      CommandTemplate data,
      int chunkSamples,
      boolean asText) {

    /** Whether a part of a record can be asked for. */
    boolean inParts() {
      return !window.isEmpty() || data.placeholders().contains(Placeholder.LAST);
    }
  }

  /**
   * What an instrument must do before it hands out samples.
   *
   * @param commands that make it begin
   * @param ready how to ask whether it is done
   * @param perSampleSeconds the wait for each sample of the record
   * @param forEachPart whether every part of a record is prepared, not only the record
   */
  record Preparation(
      List<CommandTemplate> commands,
      Optional<Ready> ready,
      OptionalDouble perSampleSeconds,
      boolean forEachPart) {}

  /**
   * A question that is asked until its answer says so.
   *
   * @param answer what the whole answer looks like once it is ready
   */
  record Ready(CommandTemplate query, Pattern answer, Duration poll, Duration atMost) {}

  /**
   * Codes that are no voltages.
   *
   * @param lowestCode codes at or below it are clipped; else the lowest that a code can be
   * @param highestCode codes at or above it are clipped; else the highest that a code can be
   * @param holeCode the code of a sample that was not taken
   */
  record Rails(OptionalDouble lowestCode, OptionalDouble highestCode, OptionalDouble holeCode) {}
}

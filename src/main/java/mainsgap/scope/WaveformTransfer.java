package mainsgap.scope;

import java.util.List;
import java.util.OptionalDouble;

/** How a channel's record comes over the wire. */
sealed interface WaveformTransfer {

  /** What to send before a channel is read. */
  List<CommandTemplate> select();

  /** Which part of the record to send; empty where it comes whole. */
  List<CommandTemplate> window();

  /** The query whose reply is the block. */
  CommandTemplate data();

  /** The most samples in one block. */
  int chunkSamples();

  /** Whether the least significant byte comes first. */
  boolean lsbFirst();

  /** SCPI-1999's REAL,32: volts at the input, or at the tip where the instrument is told. */
  record TypedData(
      List<CommandTemplate> select,
      List<CommandTemplate> window,
      CommandTemplate data,
      int chunkSamples,
      boolean lsbFirst)
      implements WaveformTransfer {}

  /** Codes, and ten numbers that say what they mean. */
  record TenFields(
      List<CommandTemplate> select,
      List<CommandTemplate> window,
      CommandTemplate data,
      int chunkSamples,
      boolean lsbFirst,
      CommandTemplate preamble,
      Scaling scaling,
      int bytesPerCode,
      boolean signed,
      OptionalDouble lowestCode,
      OptionalDouble highestCode)
      implements WaveformTransfer {

    /** The least that a code can take; {@code bytesPerCode} 0 leaves it to the block's length. */
    int leastBytes() {
      return bytesPerCode == 0 ? 1 : bytesPerCode;
    }

    /** The most that a code can take. */
    int mostBytes() {
      return bytesPerCode == 0 ? 2 : bytesPerCode;
    }
  }

  /** What the ninth of the ten fields, yorigin, is. */
  enum Scaling {
    /** Volts: {@code (code - yreference) * yincrement + yorigin}. */
    ORIGIN_IN_VOLTS,
    /** Codes: {@code (code - yreference - yorigin) * yincrement}. */
    ORIGIN_IN_CODES
  }
}

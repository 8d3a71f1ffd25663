package mainsgap.scope;

import java.util.List;
import java.util.Map;

/**
 * How to ask once for the state of the acquisition. A stopped instrument reads as {@link
 * AcquisitionState#IDLE}; whether that means a whole record is for the driver, which knows what it
 * saw before.
 */
sealed interface StatePolling {

  /** The message. */
  CommandTemplate query();

  /** One word for each state, in capitals. */
  record ByWords(CommandTemplate query, Map<String, AcquisitionState> words)
      implements StatePolling {
    public ByWords {
      words = Map.copyOf(words);
    }
  }

  /** A register: the first row whose bit is set decides, none set is idle. */
  record ByBits(CommandTemplate query, List<Bit> bits) implements StatePolling {
    public ByBits {
      bits = List.copyOf(bits);
    }
  }

  /**
   * A bit of the register.
   *
   * @param number from 0
   * @param means the state while it is set
   */
  record Bit(int number, AcquisitionState means) {}
}

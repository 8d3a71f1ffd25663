package mainsgap.bench;

import java.util.List;

/**
 * What a discovery found.
 *
 * @param kind how it ended
 * @param instruments what was found, the network first
 * @param notes what could not be looked at, and why
 */
public record DiscoveryEnd(Kind kind, List<FoundInstrument> instruments, List<String> notes) {

  /** The ways in which a discovery ends. */
  public enum Kind {
    /** It looked everywhere. */
    COMPLETE,
    /** The user asked for something that cannot be. */
    WRONG_USE,
    /** Stopped by the user. */
    STOPPED
  }

  /** Takes its own copies. */
  public DiscoveryEnd {
    instruments = List.copyOf(instruments);
    notes = List.copyOf(notes);
  }
}

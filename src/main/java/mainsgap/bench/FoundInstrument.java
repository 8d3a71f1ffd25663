package mainsgap.bench;

import java.util.List;

/**
 * Something that may be an instrument, and the links to it.
 *
 * @param name as it announces itself or as the system describes it
 * @param manufacturer empty where not known
 * @param model empty where not known
 * @param serial empty where not known
 * @param firmware empty where not known
 * @param known how the identity is known
 * @param links the best first; empty where it announces itself and offers none
 * @param profile the profile that names it; empty where none does
 * @param remark what else there is to know, a sentence or nothing
 */
public record FoundInstrument(
    String name,
    String manufacturer,
    String model,
    String serial,
    String firmware,
    Known known,
    List<Link> links,
    String profile,
    String remark) {

  /** How an identity is known. */
  public enum Known {
    /** It was asked {@code *IDN?}. */
    ASKED,
    /** It announces it. */
    ANNOUNCED,
    /** Not at all. */
    NO
  }

  /** From where a link is known. */
  public enum Source {
    /** Announced on the network. */
    ANNOUNCED("announced"),
    /** It answered a broadcast. */
    BROADCAST("broadcast"),
    /** The system knows the device. */
    USB("USB"),
    /** The system has the port; what hangs on it nobody knows. */
    SERIAL("serial port");

    private final String word;

    Source(String word) {
      this.word = word;
    }

    /** One or two words. */
    public String word() {
      return word;
    }
  }

  /**
   * A way to an instrument.
   *
   * @param resource its resource name
   * @param source from where it is known
   */
  public record Link(String resource, Source source) {}

  /** Takes its own copy. */
  public FoundInstrument {
    links = List.copyOf(links);
  }

  /** Whether something is known to be there, rather than a port to which nothing may hang. */
  public boolean isThere() {
    return known == Known.ASKED || links.stream().noneMatch(link -> link.source() == Source.SERIAL);
  }
}

package mainsgap.bench;

import java.util.Optional;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;

/** The instrument that a series runs on. */
public sealed interface InstrumentChoice {

  /**
   * An instrument that answers at a resource name.
   *
   * @param resource a VISA resource name, such as {@code TCPIP::192.168.1.20::5025::SOCKET}
   */
  record Real(String resource) implements InstrumentChoice {

    /** Why the name cannot be used; goes on after 'cannot be used: '. Nothing is connected to. */
    public Optional<String> complaint() {
      try {
        ResourceName unused = ResourceName.parse(resource);
        return Optional.empty();
      } catch (LinkException e) {
        return Optional.of(String.valueOf(e.getMessage()));
      }
    }
  }

  /**
   * The built-in simulated bench.
   *
   * @param unit one of {@link SimulatedUnits#names()}
   * @param seed fixes everything that is left to chance
   */
  record Simulated(String unit, long seed) implements InstrumentChoice {}
}

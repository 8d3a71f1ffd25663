package mainsgap.scope;

import mainsgap.link.LinkOpener;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * The way to an instrument.
 *
 * @param resource where it is
 * @param links how the link is opened
 * @param clock the time
 * @param stop ends its waits
 */
public record InstrumentAccess(
    ResourceName resource, LinkOpener links, Clock clock, StopRequest stop) {

  /** The plain way. */
  public static InstrumentAccess plain(ResourceName resource, Clock clock, StopRequest stop) {
    return new InstrumentAccess(resource, LinkOpener.PLAIN, clock, stop);
  }

  ScpiInstrument open(ScpiOptions options) {
    return ScpiInstrument.open(resource, links, options, clock);
  }
}

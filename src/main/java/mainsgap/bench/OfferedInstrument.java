package mainsgap.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import mainsgap.link.Announcement.Told;
import mainsgap.link.ResourceName;

/** The offers that are one instrument's. */
final class OfferedInstrument {
  private final List<Offer> offers = new ArrayList<>();

  /** Puts together what belongs together; the order of the sources stays. */
  static List<OfferedInstrument> of(List<Offer> offers) {
    List<OfferedInstrument> instruments = new ArrayList<>();
    // who tells a serial number founds an instrument; who does not joins it by its address
    Stream.concat(
            offers.stream().filter(offer -> offer.told().isSpecimen()),
            offers.stream().filter(offer -> !offer.told().isSpecimen()))
        .forEach(
            offer ->
                instruments.stream()
                    .filter(instrument -> instrument.takes(offer))
                    .findFirst()
                    .orElseGet(
                        () -> {
                          OfferedInstrument founded = new OfferedInstrument();
                          instruments.add(founded);
                          return founded;
                        })
                    .offers
                    .add(offer));
    return instruments;
  }

  /** The offers, the best link first. */
  List<Offer> offers() {
    return offers.stream().sorted(Comparator.comparingInt(Offer::rank)).toList();
  }

  /** Its links, each once, the best first. */
  List<ResourceName> resources() {
    return offers().stream()
        .map(Offer::resource)
        .filter(Objects::nonNull)
        .map(ResourceName.class::cast)
        .distinct()
        .toList();
  }

  /** What it tells of itself. */
  Told told() {
    return offers.stream()
        .map(Offer::told)
        .filter(told -> !told.isEmpty())
        .findFirst()
        .orElse(Offer.NOTHING);
  }

  boolean isSerialPort() {
    return offers.stream().allMatch(offer -> offer.source() == FoundInstrument.Source.SERIAL);
  }

  private boolean takes(Offer offer) {
    Told mine = told();
    Told other = offer.told();
    if (mine.isSpecimen() && other.isSpecimen()) {
      return mine.model().equals(other.model()) && mine.serial().equals(other.serial());
    }
    return !offer.host().isEmpty()
        && offers.stream()
            .anyMatch(
                one ->
                    one.host().equals(offer.host())
                        && (one.name().equals(offer.name())
                            || offer.source() == FoundInstrument.Source.BROADCAST));
  }
}

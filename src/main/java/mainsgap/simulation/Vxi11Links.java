package mainsgap.simulation;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import mainsgap.waiting.Clock;

/** The links of all clients to the instruments of a bench, by number. Safe for all threads. */
final class Vxi11Links {
  private static final int MOST_LINKS = 64;
  private static final int NO_ERROR = 0;
  private static final int NOT_ACCESSIBLE = 3;
  private static final int OUT_OF_RESOURCES = 9;

  private final Map<String, Instrument> instruments = new ConcurrentHashMap<>();
  private final Map<Integer, Vxi11Device> links = new ConcurrentHashMap<>();
  private final AtomicInteger newest = new AtomicInteger();
  private final FaultSwitch faults;
  private final Clock clock;
  private volatile int abortPort;

  Vxi11Links(FaultSwitch faults, Clock clock) {
    this.faults = faults;
    this.clock = clock;
  }

  /**
   * What became of the wish for a link.
   *
   * @param error 0 where it was made
   * @param id its number
   */
  record Made(int error, int id) {}

  /** From now on the instrument answers to this device name. */
  void add(String deviceName, Instrument instrument) {
    instruments.put(deviceName, instrument);
  }

  Made make(String deviceName) {
    Instrument instrument = instruments.get(deviceName.toLowerCase(Locale.ROOT));
    if (instrument == null) {
      return new Made(NOT_ACCESSIBLE, 0);
    }
    if (links.size() >= MOST_LINKS) {
      return new Made(OUT_OF_RESOURCES, 0);
    }
    int id = newest.incrementAndGet();
    links.put(id, new Vxi11Device(instrument, faults, clock));
    return new Made(NO_ERROR, id);
  }

  Optional<Vxi11Device> device(int id) {
    return Optional.ofNullable(links.get(id));
  }

  boolean remove(int id) {
    Vxi11Device device = links.remove(id);
    if (device != null) {
      device.abort();
    }
    return device != null;
  }

  void removeAll() {
    links.keySet().forEach(this::remove);
  }

  int abortPort() {
    return abortPort;
  }

  void listensForAborts(int port) {
    abortPort = port;
  }
}

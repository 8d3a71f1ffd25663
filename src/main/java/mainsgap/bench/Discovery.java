package mainsgap.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import mainsgap.bench.DiscoveryEnd.Kind;
import mainsgap.bench.FoundInstrument.Source;
import mainsgap.link.Announcements;
import mainsgap.link.LinkException;
import mainsgap.link.SerialPorts;
import mainsgap.link.UsbInstruments;
import mainsgap.link.Vxi11Broadcast;
import mainsgap.scope.InstrumentProfiles;
import mainsgap.scope.ScopeException;
import mainsgap.settings.SettingsException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import mainsgap.waiting.StoppedException;

/**
 * Looks for instruments: those that announce themselves, and on request those that answer a
 * broadcast; the USBTMC instruments and serial ports of this computer. Nothing is ever sent to an
 * instrument but {@code *IDN?}, and that only on request.
 */
public final class Discovery {
  private static final Duration BROADCAST_TIME = Duration.ofSeconds(1);

  private final DiscoveryRequest request;
  private final Clock clock = Clock.system();
  private final List<Offer> offers = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  private Discovery(DiscoveryRequest request) {
    this.request = request;
  }

  /** The discovery that {@code request} asks for; nothing is looked at yet. */
  public static Discovery of(DiscoveryRequest request) {
    return new Discovery(request);
  }

  /** Looks; {@code progress} hears what is being done. */
  public DiscoveryEnd run(Consumer<String> progress, StopRequest stop) {
    try {
      InstrumentProfiles profiles = InstrumentProfiles.load(ProfileFolder.find());
      listen(progress, stop);
      if (request.broadcast()) {
        progress.accept("asking for VXI-11 instruments by broadcast, 1 s");
        looking(
            () ->
                Vxi11Broadcast.find(Deadline.after(BROADCAST_TIME, clock), stop).stream()
                    .map(Offer::ofBroadcast)
                    .toList());
      }
      looking(
          () ->
              UsbInstruments.present().stream()
                  .map(one -> Offer.ofPort(one.resource(), Source.USB, one.description()))
                  .toList());
      looking(
          () ->
              SerialPorts.present().stream()
                  .map(one -> Offer.ofPort(one.resource(), Source.SERIAL, one.description()))
                  .toList());
      Identification identification = new Identification(request, profiles, clock, stop);
      return end(Kind.COMPLETE, identification.of(OfferedInstrument.of(offers), progress));
    } catch (BenchException | SettingsException | ScopeException e) {
      notes.add(String.valueOf(e.getMessage()));
      return end(Kind.WRONG_USE, List.of());
    } catch (StoppedException e) {
      return end(Kind.STOPPED, List.of());
    }
  }

  private void listen(Consumer<String> progress, StopRequest stop) {
    progress.accept(
        "listening for instruments that announce themselves, "
            + Words.plain(request.listen().toMillis() / 1e3)
            + " s");
    looking(
        () -> Announcements.listen(request.listen(), clock, stop).stream().map(Offer::of).toList());
  }

  /** A place that cannot be looked at is told, and the others are looked at. */
  private void looking(Supplier<List<Offer>> place) {
    try {
      offers.addAll(place.get());
    } catch (LinkException e) {
      notes.add(String.valueOf(e.getMessage()));
    }
  }

  private DiscoveryEnd end(Kind kind, List<FoundInstrument> instruments) {
    return new DiscoveryEnd(kind, instruments, notes);
  }
}

package mainsgap.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import mainsgap.bench.FoundInstrument.Known;
import mainsgap.link.Announcement.Told;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;
import mainsgap.scope.InstrumentProfiles;
import mainsgap.scpi.Identity;
import mainsgap.scpi.ScpiException;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/** Asks what was found who it is, where that is wanted: {@code *IDN?} and nothing else. */
final class Identification {
  private static final int AT_A_TIME = 8;
  private static final int MOST_LINKS = 3;
  private static final Duration BETWEEN_LOOKS = Duration.ofMillis(20);
  private static final ScpiOptions OPTIONS =
      ScpiOptions.standard().withReplyTimeout(Duration.ofSeconds(2));

  private final DiscoveryRequest request;
  private final InstrumentProfiles profiles;
  private final Clock clock;
  private final StopRequest stop;

  Identification(
      DiscoveryRequest request, InstrumentProfiles profiles, Clock clock, StopRequest stop) {
    this.request = request;
    this.profiles = profiles;
    this.clock = clock;
    this.stop = stop;
  }

  /** All instruments in their order; those that are asked are asked side by side. */
  List<FoundInstrument> of(List<OfferedInstrument> offered, Consumer<String> progress) {
    long asked = offered.stream().filter(this::isAsked).count();
    if (asked > 0) {
      progress.accept("asking " + asked + (asked == 1 ? " instrument" : " instruments") + " *IDN?");
    }
    ExecutorService pool = Executors.newFixedThreadPool(AT_A_TIME, Identification::daemon);
    try {
      List<Future<FoundInstrument>> answers = new ArrayList<>();
      offered.forEach(one -> answers.add(pool.submit(() -> found(one))));
      List<FoundInstrument> found = new ArrayList<>();
      for (Future<FoundInstrument> answer : answers) {
        while (!answer.isDone()) {
          clock.pause(BETWEEN_LOOKS, stop);
        }
        found.add(result(answer));
      }
      return found;
    } finally {
      pool.shutdownNow();
    }
  }

  private static FoundInstrument result(Future<FoundInstrument> answer) {
    try {
      return answer.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while nothing was awaited", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("asking an instrument failed: " + e.getCause(), e);
    }
  }

  private boolean isAsked(OfferedInstrument one) {
    return !one.resources().isEmpty()
        && (one.isSerialPort() ? request.identifySerial() : request.identify());
  }

  private FoundInstrument found(OfferedInstrument one) {
    if (!isAsked(one)) {
      return of(one, one.told(), one.told().isEmpty() ? Known.NO : Known.ANNOUNCED, unasked(one));
    }
    String complaint = "";
    for (ResourceName resource : one.resources().stream().limit(MOST_LINKS).toList()) {
      try (ScpiInstrument instrument = ScpiInstrument.open(resource, OPTIONS, clock)) {
        Identity identity = instrument.identity();
        return of(
            one,
            new Told(
                Words.printable(identity.manufacturer()),
                Words.printable(identity.model()),
                Words.printable(identity.serial()),
                Words.printable(identity.firmware())),
            Known.ASKED,
            complaint.isEmpty() ? "" : "it answered at " + resource + ", but " + complaint);
      } catch (LinkException | ScpiException e) {
        complaint = Words.printable(String.valueOf(e.getMessage()));
      }
    }
    return of(
        one,
        one.told(),
        one.told().isEmpty() ? Known.NO : Known.ANNOUNCED,
        "it does not say who it is: " + complaint);
  }

  private static String unasked(OfferedInstrument one) {
    return one.resources().isEmpty()
        ? "it announces no link: ask at its address for a raw socket, HiSLIP or VXI-11"
        : "";
  }

  private FoundInstrument of(OfferedInstrument one, Told told, Known known, String remark) {
    List<FoundInstrument.Link> links = new ArrayList<>();
    for (Offer offer : one.offers()) {
      ResourceName resource = offer.resource();
      if (resource != null
          && links.stream().noneMatch(link -> link.resource().equals(resource.toString()))) {
        links.add(new FoundInstrument.Link(resource.toString(), offer.source()));
      }
    }
    return new FoundInstrument(
        one.offers().get(0).name(),
        told.manufacturer(),
        told.model(),
        told.serial(),
        told.firmware(),
        known,
        links,
        profile(told),
        remark);
  }

  private String profile(Told told) {
    return told.isEmpty()
        ? ""
        : String.join(
            ", ",
            profiles.naming(
                new Identity(told.manufacturer(), told.model(), told.serial(), told.firmware())));
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "identification");
    thread.setDaemon(true);
    return thread;
  }
}

package mainsgap.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import mainsgap.scope.CapturePlan;
import mainsgap.session.Remark;
import mainsgap.session.SessionHeader;
import mainsgap.session.SessionLog;
import mainsgap.waiting.Clock;

/** The session of a series: made or gone on with, and begun. */
final class OpenSession implements AutoCloseable {
  private final Path file;
  private final SessionLog log;
  private final List<TrialReport> earlier;

  private OpenSession(Path file, SessionLog log, List<TrialReport> earlier) {
    this.file = file;
    this.log = log;
    this.earlier = earlier;
  }

  /** Opens the session that {@code setup} names, and logs that a series begins. */
  static OpenSession open(SeriesSetup setup, Equipment equipment, CapturePlan plan, Clock clock) {
    SessionHeader header = header(setup, equipment, plan, clock);
    SessionPlace place = setup.request().session();
    Path asked = place.file();
    Path folder = place.folder();
    Path file =
        asked == null
            ? DataFolder.newSession(
                folder == null ? DataFolder.of(System.getenv(), System.getProperties()) : folder,
                setup.unit(),
                clock.instant())
            : asked;
    boolean goesOn = asked != null && place.goOn();
    SessionLog log = goesOn ? resumed(file, header) : SessionLog.create(file, header);
    try {
      begin(log, setup, header, clock);
      return new OpenSession(file, log, goesOn ? KeptSession.read(file).trials() : List.of());
    } catch (RuntimeException e) {
      log.close();
      throw e;
    }
  }

  Path file() {
    return file;
  }

  /** The trials of earlier runs. */
  List<TrialReport> earlier() {
    return earlier;
  }

  SessionLog log() {
    return log;
  }

  @Override
  public void close() {
    log.close();
  }

  private static void begin(SessionLog log, SeriesSetup setup, SessionHeader header, Clock clock) {
    if (setup.request().cautionsRead()) {
      String unused =
          log.append(
              new Remark(
                  clock.instant(),
                  Remark.Kind.CAUTIONS_READ,
                  "the "
                      + Cautions.of(setup.request()).size()
                      + " cautions of Mainsgap "
                      + ProgramVersion.get()
                      + " were read, the user says"));
    }
    String unused =
        log.append(
            new Remark(
                clock.instant(),
                Remark.Kind.SERIES_STARTED,
                begins(setup.request().trials(), header, log.header())));
  }

  /** With what it is measured may change, and is told where it does. */
  private static String begins(int trials, SessionHeader header, SessionHeader first) {
    List<String> others = new ArrayList<>();
    if (!header.instrument().equals(first.instrument())) {
      others.add("instrument " + header.instrument());
    }
    others.addAll(others(header.rig(), first.rig()));
    others.addAll(others(header.conditions(), first.conditions()));
    return "a series of "
        + (trials == 1 ? "1 trial" : trials + " trials")
        + " begins"
        + (others.isEmpty() ? "" : "; other than at first: " + String.join(", ", others));
  }

  private static List<String> others(Map<String, String> words, Map<String, String> first) {
    Set<String> labels = new LinkedHashSet<>(words.keySet());
    labels.addAll(first.keySet());
    return labels.stream()
        .filter(label -> !Objects.equals(words.get(label), first.get(label)))
        .map(label -> label + " " + words.getOrDefault(label, "not told"))
        .toList();
  }

  /** What is measured must not change within a session; its first entry stands for all trials. */
  private static SessionLog resumed(Path file, SessionHeader wanted) {
    SessionLog log = SessionLog.resume(file);
    SessionHeader kept = log.header();
    boolean same =
        kept.unit().equals(wanted.unit())
            && kept.task().equals(wanted.task())
            && kept.simulated() == wanted.simulated()
            && Objects.equals(kept.claim(), wanted.claim())
            && kept.decisionRule() == wanted.decisionRule();
    if (!same) {
      log.close();
      throw new BenchException(
          "the session "
              + file
              + " is about '"
              + kept.unit()
              + "', "
              + words(kept)
              + "; this series is about '"
              + wanted.unit()
              + "', "
              + words(wanted)
              + ": give the same values, or another session");
    }
    return log;
  }

  private static String words(SessionHeader header) {
    return header.task().event().word()
        + " at "
        + Words.plain(header.task().nominalVolts())
        + " V "
        + Words.plain(header.task().nominalFrequencyHertz())
        + " Hz, declared "
        + (header.claim() == null ? "nothing" : header.claim().asPrinted())
        + ", decision rule "
        + header.decisionRule().word()
        + (header.simulated() ? ", simulated" : "");
  }

  private static SessionHeader header(
      SeriesSetup setup, Equipment equipment, CapturePlan plan, Clock clock) {
    Map<String, String> rig = new LinkedHashMap<>(setup.rigWords());
    rig.put(SessionHeader.DECISION_RULE, setup.request().rule().word());
    rig.put("resource", equipment.resource());
    rig.put("catch method", plan.method().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    rig.put("blind zone", plan.blindness().words());
    return new SessionHeader(
        clock.instant(),
        ProgramVersion.get(),
        !setup.isReal(),
        setup.unit(),
        setup.request().claim(),
        setup.task(),
        equipment.instrument().identity().toString(),
        rig,
        setup.conditionWords());
  }
}

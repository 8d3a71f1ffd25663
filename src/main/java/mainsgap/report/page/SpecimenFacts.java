package mainsgap.report.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import mainsgap.report.Wording;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.claim.DeclaredClaim;
import org.jspecify.annotations.Nullable;

/** What a session says of the specimen, the rig and the claim; what it does not say, is said so. */
final class SpecimenFacts {
  /** What a reader looks for, whether the session has it or not. */
  private static final List<String> LOOKED_FOR = List.of("serial", "firmware", "load");

  /** Who measured: the owner of the rig may have written it among the conditions. */
  private static final String PERSON = "measured by";

  private SpecimenFacts() {}

  /** The specimen, its load and its conditions. */
  static List<Fact> specimen(SessionHeader header) {
    Map<String, String> others = new LinkedHashMap<>(header.conditions());
    List<Fact> facts = new ArrayList<>();
    facts.add(Fact.of("unit", header.unit()));
    for (String label : LOOKED_FOR) {
      facts.add(Fact.of(label, others.remove(label)));
    }
    others.remove(PERSON);
    facts.add(new Fact("event", Wording.task(header.task())));
    facts.addAll(Fact.of(others));
    return facts;
  }

  /** How a capture was sampled, in words. */
  static String sampling(TimeAxis time) {
    return String.format(
        Locale.ROOT,
        "every %s µs, %d samples; time base ±%s ppm%s",
        Wording.plain(1e6 * time.intervalSeconds()),
        time.length(),
        Wording.plain(time.timeBasePpm()),
        time.timeBaseAssumed() ? ", assumed" : ", as the profile states");
  }

  /** By what, how, when and by whom it was measured. */
  static List<Fact> rig(ReportedSession reported) {
    Session session = reported.session();
    SessionHeader header = session.header();
    Map<String, String> words = new LinkedHashMap<>(header.rig());
    words.remove(SessionHeader.DECISION_RULE);
    List<Fact> facts = new ArrayList<>();
    facts.add(Fact.of("instrument", header.instrument()));
    facts.addAll(Fact.of(words));
    facts.add(
        Fact.of(
            "sampled",
            reported.axes().stream()
                .map(SpecimenFacts::sampling)
                .collect(Collectors.joining("; "))));
    facts.add(Fact.of(PERSON, header.conditions().get(PERSON)));
    facts.add(new Fact("session begun", PageTime.of(header.startedAt())));
    facts.add(new Fact("trials", when(session.trials())));
    return facts;
  }

  private static String when(List<LoggedTrial> trials) {
    return trials.isEmpty()
        ? "none"
        : PageTime.of(trials.get(0).at())
            + " to "
            + PageTime.of(trials.get(trials.size() - 1).at());
  }

  /** The claim as it is stored. */
  static List<Fact> claim(@Nullable DeclaredClaim claim) {
    if (claim == null) {
      return List.of(new Fact("declared time", "none: nothing is judged"));
    }
    return List.of(
        Fact.of("declared, as printed", claim.asPrinted()),
        new Fact("taken as", claim.value() + ", " + kind(claim.kind())),
        Fact.of("its definition", claim.definition()),
        Fact.of("printed in", claim.source()),
        Fact.of("read on", claim.date()));
  }

  private static String kind(DeclaredClaim.Kind kind) {
    return switch (kind) {
      case MAXIMUM -> "a maximum";
      case TYPICAL -> "a typical value, which is compared and not judged";
      case UNSTATED -> "a maximum, which the print does not say";
    };
  }
}

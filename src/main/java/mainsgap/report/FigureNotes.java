package mainsgap.report;

import java.util.ArrayList;
import java.util.List;
import mainsgap.session.SessionHeader;

/** What is told at the foot of figures, and beside names. */
public final class FigureNotes {
  public static final String TRANSFER_TIME =
      "Transfer time: from the loss of the supply (first opening) to the instant from which the load"
          + " is fed without a break. It is near the total transfer time of IEC 62040-3, whose"
          + " transfer time starts later, at the initiation.";

  public static final String UPPER_BOUND =
      "Upper bound: 95 % of transfers lie below it with 95 % confidence, normal distribution.";

  private static final String SOME_SIMULATED =
      "Simulated: data of a so marked unit come from the built-in simulation.";

  private FigureNotes() {}

  /** Begins the line below the title, which is never left out; nothing where none are simulated. */
  static String simulated(List<SessionHeader> headers) {
    return areAllSimulated(headers)
        ? "SIMULATED DATA · "
        : headers.stream().anyMatch(SessionHeader::simulated) ? "PARTLY SIMULATED DATA · " : "";
  }

  /** What a mark means where only some are simulated. */
  static List<String> someSimulated(List<SessionHeader> headers) {
    return headers.stream().anyMatch(SessionHeader::simulated) && !areAllSimulated(headers)
        ? List.of(SOME_SIMULATED)
        : List.of();
  }

  /** What has to be told beside a unit's name, such as " [simulated]"; mostly nothing. */
  static String mark(SessionHeader header, boolean isCompared, List<SessionHeader> all) {
    List<String> marks = new ArrayList<>();
    if (header.simulated() && !areAllSimulated(all)) {
      marks.add("simulated");
    }
    if (!isCompared) {
      marks.add(Ranking.NOT_COMPARED);
    }
    return marks.isEmpty() ? "" : " [" + String.join(", ", marks) + "]";
  }

  private static boolean areAllSimulated(List<SessionHeader> headers) {
    return headers.stream().allMatch(SessionHeader::simulated);
  }

  /** By what rules verdicts were reached, where the trials were judged. */
  static List<String> rules(List<UnitSeries> series) {
    List<String> rules =
        series.stream()
            .filter(one -> one.summary().verdict() != null)
            .map(one -> one.header().decisionRule().title())
            .distinct()
            .toList();
    return rules.isEmpty() ? List.of() : List.of("Judged by " + String.join("; ", rules) + ".");
  }
}

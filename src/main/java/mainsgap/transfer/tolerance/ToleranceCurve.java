package mainsgap.transfer.tolerance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.transfer.outcome.Wording;
import mainsgap.transfer.tolerance.ToleranceFinding.Standing;
import org.jspecify.annotations.Nullable;

/**
 * A voltage-tolerance curve as steps.
 *
 * @param name short
 * @param edition which edition the steps are taken from
 * @param scope what it is made for, in words
 * @param nominalVolts the RMS voltage that it is made for; null for any
 * @param nominalHertz the frequency that it is made for; null for any
 * @param fromMillis it says nothing of what is shorter
 * @param below what lies under its sag steps, in words; null where it has no name
 * @param above what lies over its swell steps, in words; null where it has no name
 * @param sags in any order
 * @param swells in any order; empty where it knows no swell
 */
public record ToleranceCurve(
    String name,
    String edition,
    String scope,
    @Nullable Double nominalVolts,
    @Nullable Double nominalHertz,
    double fromMillis,
    @Nullable String below,
    @Nullable String above,
    List<ToleranceLevel> sags,
    List<ToleranceLevel> swells) {

  /** Takes its own copies. */
  public ToleranceCurve {
    sags = List.copyOf(sags);
    swells = List.copyOf(swells);
  }

  /** Where {@code deviation} stands on this curve, on a supply of these nominal values. */
  public ToleranceFinding find(VoltageDeviation deviation, double volts, double hertz) {
    Side side = side(deviation, hertz);
    Place least = side.place(deviation.leastMillis());
    Place most = side.place(deviation.mostMillis());
    Standing standing = least.standing() == most.standing() ? least.standing() : Standing.TOO_CLOSE;
    List<String> cautions = cautions(volts, hertz, least, most);
    String sentence =
        name
            + ": "
            + standing.name().toLowerCase(Locale.ROOT).replace('_', ' ')
            + ", "
            + deviation.words()
            + " against "
            + Stream.of(least, most)
                .map(Place::words)
                .distinct()
                .collect(Collectors.joining(" and "))
            + region(standing, deviation)
            + recommendation(standing, side, deviation)
            + (cautions.isEmpty() ? "" : "; indicative: " + String.join("; ", cautions));
    return new ToleranceFinding(name, standing, cautions, sentence);
  }

  private Side side(VoltageDeviation deviation, double hertz) {
    boolean swell = deviation.percent() > 100;
    return new Side(
        (swell ? swells : sags).stream().filter(level -> level.isFor(hertz)).toList(),
        swell,
        deviation.percent(),
        fromMillis);
  }

  private List<String> cautions(double volts, double hertz, Place least, Place most) {
    List<String> cautions = new ArrayList<>();
    boolean otherVolts = nominalVolts != null && Math.abs(volts - nominalVolts) > 0.5;
    boolean otherHertz = nominalHertz != null && Math.abs(hertz - nominalHertz) > 0.5;
    if (otherVolts || otherHertz) {
      cautions.add(
          "made for "
              + scope
              + ", this supply is "
              + Wording.plain(volts)
              + " V "
              + Wording.plain(hertz)
              + " Hz");
    }
    Stream.of(least, most)
        .map(Place::level)
        .flatMap(Optional::stream)
        .filter(level -> level.evidence() == Evidence.FROM_MEMORY)
        .distinct()
        .map(level -> "its point " + level.words() + " is from memory")
        .forEach(cautions::add);
    return cautions;
  }

  private String region(Standing standing, VoltageDeviation deviation) {
    String region = deviation.percent() > 100 ? above : below;
    return standing == Standing.OUTSIDE && region != null ? " (" + region + ")" : "";
  }

  private static String recommendation(Standing standing, Side side, VoltageDeviation deviation) {
    return standing == Standing.INSIDE
        ? ""
        : side.recommended(deviation.mostMillis())
            .map(level -> "; within its recommended " + level.words())
            .orElse("");
  }

  /** The steps on one side of nominal, and the level that is held against them. */
  private record Side(
      List<ToleranceLevel> levels, boolean swell, double percent, double fromMillis) {

    Place place(double millis) {
      if (millis < fromMillis) {
        return Place.nowhere("no level under " + Wording.span(fromMillis));
      }
      return of(ToleranceLevel.Need.REQUIRED)
          .filter(level -> level.covers(millis))
          .min(widest())
          .map(level -> new Place(allows(level) ? Standing.INSIDE : Standing.OUTSIDE, level, ""))
          .orElseGet(this::beyondTheLast);
    }

    /** What is already outside at the longest step does not come back by lasting longer. */
    private Place beyondTheLast() {
      Optional<ToleranceLevel> last =
          of(ToleranceLevel.Need.REQUIRED)
              .max(Comparator.comparingDouble(ToleranceLevel::upToMillis));
      if (last.isEmpty()) {
        return Place.nowhere("no level for " + (swell ? "swells" : "sags") + " on this supply");
      }
      return allows(last.get())
          ? Place.nowhere("no level beyond " + Wording.span(last.get().upToMillis()))
          : new Place(Standing.OUTSIDE, last.get(), "");
    }

    Optional<ToleranceLevel> recommended(double millis) {
      return of(ToleranceLevel.Need.RECOMMENDED)
          .filter(level -> level.covers(millis) && allows(level))
          .min(widest());
    }

    private Stream<ToleranceLevel> of(ToleranceLevel.Need need) {
      return levels.stream().filter(level -> level.need() == need);
    }

    /** The step that allows most comes first. */
    private Comparator<ToleranceLevel> widest() {
      Comparator<ToleranceLevel> lowest = Comparator.comparingDouble(ToleranceLevel::percent);
      return swell ? lowest.reversed() : lowest;
    }

    private boolean allows(ToleranceLevel level) {
      return swell ? percent <= level.percent() : percent >= level.percent();
    }
  }

  /** Where one duration stands, by which step, or why by none. */
  private record Place(Standing standing, @Nullable ToleranceLevel step, String none) {

    static Place nowhere(String why) {
      return new Place(Standing.NOT_COVERED, null, why);
    }

    Optional<ToleranceLevel> level() {
      return Optional.ofNullable(step);
    }

    String words() {
      return step == null ? none : step.words();
    }
  }
}

package mainsgap.transfer.bank;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * A figure of the table that has to lie within limits.
 *
 * @param name whose figure, and which
 * @param found in the unit that the name gives
 */
public record Gate(String name, double found, double least, double most) {

  /** Whether the figure lies within its limits; one that is no number does not. */
  public boolean holds() {
    return found >= least && found <= most;
  }

  /** The gates of each kind and of all together. */
  public static List<Gate> of(List<KindFigures> all) {
    return Stream.concat(all.stream().flatMap(Gate::of), of(OverallFigures.of(all))).toList();
  }

  private static Stream<Gate> of(KindFigures kind) {
    String name = kind.kind().name();
    Stream<Gate> outcomes =
        Stream.of(
            new Gate(name + " wrong outcomes", kind.wrong(), 0, 0),
            new Gate(name + " wrong breaks", kind.wrongBreaks(), 0, 0));
    Stream<Gate> intervals =
        kind.hasInstants()
            ? Stream.of(
                new Gate(name + " held %", 100 * kind.coveredShare(), 93, 98),
                new Gate(name + " median of U / error", kind.ownPadding(), 0, 4))
            : Stream.of();
    Stream<Gate> bounds =
        kind.hasTransferTime() && !kind.kind().returnsWithinARest()
            ? Stream.of(new Gate(name + " bounded %", 100 * kind.withinBoundShare(), 95, 100))
            : Stream.of();
    return Stream.of(outcomes, bounds, intervals).flatMap(gates -> gates);
  }

  private static Stream<Gate> of(OverallFigures overall) {
    return Stream.of(
        new Gate("overall median µs", overall.medianMicros(), 0, 5),
        new Gate("overall 95 % µs", overall.p95Micros(), 0, 40),
        new Gate("overall beyond 300 µs and 2 samples", overall.farOff(), 0, 0),
        new Gate("overall held %", 100 * overall.coveredShare(), 93, 98),
        new Gate("overall median U / median error", overall.padding(), 0, 4));
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT, "%-55s %10.1f, allowed %.0f to %.0f", name, found, least, most);
  }
}

package mainsgap.transfer.bank;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import mainsgap.transfer.outcome.Measured;

/**
 * Errors and coverage by kind as text. {@code main} prints it for any number of captures, any
 * kinds, and tells single captures.
 */
public final class AccuracyTable {
  private static final double FAR_MICROS = 40;
  private static final int EVERY_CAPTURE = 3;

  private AccuracyTable() {}

  /**
   * Prints the table.
   *
   * @param args captures a kind (50), a regular expression of kinds (all), what to tell beside: 1
   *     what was missed, 2 errors above 40 µs and wrong outcomes, 3 every capture
   */
  @SuppressWarnings("SystemOut") // it is the output
  public static void main(String[] args) {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 50;
    String only = args.length > 1 && !args[1].isEmpty() ? args[1] : ".*";
    int telling = args.length > 2 ? Integer.parseInt(args[2]) : 0;
    List<KindFigures> all = new ArrayList<>();
    System.out.print(head());
    for (CaptureKind kind : kinds().filter(one -> one.name().matches(only)).toList()) {
      KindFigures figures = KindFigures.of(kind, count);
      figures.tried().stream()
          .filter(one -> telling > 0 && isTold(figures, one, telling))
          .forEach(one -> System.out.print(told(kind, one)));
      System.out.print(row(figures));
      all.add(figures);
    }
    System.out.print(OverallFigures.of(all).line());
  }

  /** All kinds, the held-out ones last. */
  public static Stream<CaptureKind> kinds() {
    return Stream.concat(Stream.of(Kind.values()), Stream.of(HeldOutKind.values()));
  }

  /** The whole table. */
  public static String of(List<KindFigures> all) {
    StringBuilder table = new StringBuilder(head());
    all.stream()
        .filter(one -> one.kind() instanceof Kind)
        .map(AccuracyTable::row)
        .forEach(table::append);
    table.append("held out\n");
    all.stream()
        .filter(one -> one.kind() instanceof HeldOutKind)
        .map(AccuracyTable::row)
        .forEach(table::append);
    return table.append(OverallFigures.of(all).line()).toString();
  }

  private static String head() {
    return String.format(
        Locale.ROOT,
        "%-24s %5s %5s %6s | %8s %8s %8s | %7s %7s %8s %6s %6s | %9s %9s | %9s %9s | %6s%n",
        "errors in µs",
        "n",
        "wrong",
        "breaks",
        "median",
        "95 %",
        "most",
        "bounded",
        "held",
        "med U",
        "U/err",
        "own",
        "level med",
        "95 %",
        "RMS med",
        "95 %",
        "ms");
  }

  private static String row(KindFigures kind) {
    Spread errors = kind.errorsMicros();
    Spread level = Spread.of(kind.tried(), TriedCapture::levelErrorMicros);
    Spread dip = Spread.of(kind.tried(), TriedCapture::dipErrorMicros);
    String told =
        String.format(
            Locale.ROOT,
            "%-24s %5d %5d %6d | %8.1f %8.1f %8.1f | %6.1f%% %6.1f%% %8.1f %6.1f %6.1f | %9.0f %9.0f |"
                + " %9.0f %9.0f | %6.1f%n",
            kind.kind().name(),
            kind.tried().size(),
            kind.wrong(),
            kind.wrongBreaks(),
            errors.median(),
            errors.p95(),
            errors.most(),
            100 * kind.withinBoundShare(),
            100 * kind.coveredShare(),
            kind.uncertaintiesMicros().median(),
            kind.padding(),
            kind.ownPadding(),
            level.median(),
            level.p95(),
            dip.median(),
            dip.p95(),
            kind.meanMillis());
    return told.replace("NaN%", "  - ").replace("NaN", "  -");
  }

  private static boolean isTold(KindFigures kind, TriedCapture one, int telling) {
    if (telling == EVERY_CAPTURE) {
      return true;
    }
    boolean wrong = one.outcome().kind() != kind.kind().carries() || !one.hasRightBreaks();
    boolean missed = kind.hasInstants() && !one.isCovered();
    return wrong || (telling == 1 ? missed : Math.abs(one.errorMicros()) > FAR_MICROS);
  }

  private static String told(CaptureKind kind, TriedCapture one) {
    Truth truth = one.truth();
    String what =
        String.format(
            Locale.ROOT,
            "  %s %d: gap %.3f dt %.1f us noise %.3f bound %.1f us: ",
            kind.name(),
            one.seed(),
            truth.transferMillis(),
            truth.sampleMicros(),
            truth.noiseShare(),
            one.boundMicros());
    return what
        + (one.outcome() instanceof Measured measured
            ? told(measured, one)
            : one.outcome().sentence() + "\n");
  }

  private static String told(Measured measured, TriedCapture one) {
    return String.format(
        Locale.ROOT,
        "error %.1f us (loss %.1f, return %.1f) U %.1f us pow %.1f budget %s further %d%n",
        one.errorMicros(),
        (measured.lossSeconds() - one.truth().lossSeconds()) * 1e6,
        (measured.returnSeconds() - one.truth().returnSeconds()) * 1e6,
        one.uncertaintyMicros(),
        measured.pointOnWaveDegrees(),
        measured.budget().components().stream()
            .map(line -> String.format(Locale.ROOT, "%.1f", line.standardMillis() * 1e3))
            .toList(),
        measured.furtherInterruptions().count());
  }
}

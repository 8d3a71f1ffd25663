package mainsgap.transfer.bank;

import java.util.List;
import java.util.Locale;

/**
 * The captures of all kinds taken together.
 *
 * @param tidy those with noise up to 1 % and at least 100 kS/s, without the kinds whose residue
 *     leaves the sine tangentially, without returns within a rest of the output and without wrong
 *     outcomes
 * @param measured all that are rightly measured
 */
public record OverallFigures(List<TriedCapture> tidy, List<TriedCapture> measured) {
  private static final double MOST_MICROS = 300;

  /** Takes the figures of several kinds together. */
  public static OverallFigures of(List<KindFigures> kinds) {
    List<KindFigures> measuring = kinds.stream().filter(KindFigures::hasTransferTime).toList();
    return new OverallFigures(
        measuring.stream()
            .filter(one -> !one.kind().leavesTangentially())
            .flatMap(one -> one.right().stream())
            .filter(TriedCapture::isTidy)
            .toList(),
        measuring.stream().flatMap(one -> one.right().stream()).toList());
  }

  Spread errorsMicros() {
    return Spread.of(tidy, TriedCapture::errorMicros);
  }

  /** The median error of the tidy ones. */
  public double medianMicros() {
    return errorsMicros().median();
  }

  /** The 95th percentile of the same. */
  public double p95Micros() {
    return errorsMicros().p95();
  }

  /** How many of the same lie further off than 300 µs and two samples. */
  public long farOff() {
    return tidy.stream().filter(one -> !one.isWithin(MOST_MICROS)).count();
  }

  /** The share of all measured ones whose interval holds the truth. */
  public double coveredShare() {
    return (double) measured.stream().filter(TriedCapture::isCovered).count() / measured.size();
  }

  /** Median U in units of the median error, of all measured ones. */
  public double padding() {
    return Spread.of(measured, TriedCapture::uncertaintyMicros).median()
        / Spread.of(measured, TriedCapture::errorMicros).median();
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "overall, noise <= 1 %%, >= 100 kS/s, no tangential kinds, no returns in a rest: n %d, |error| median %.1f µs,"
            + " 95 %% %.1f µs, most %.1f µs, beyond 300 µs and 2 samples: %d%n"
            + "overall, all measured: n %d, interval holds %.1f %%, median U / median |error| %.1f%n",
        tidy.size(),
        medianMicros(),
        p95Micros(),
        errorsMicros().most(),
        farOff(),
        measured.size(),
        100 * coveredShare(),
        padding());
  }
}

package mainsgap.transfer.gap;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.instant.Returns;
import mainsgap.transfer.outcome.BudgetSource;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.outcome.Wording;
import mainsgap.transfer.supply.Recording;

/** Makes up the uncertainty budget of a gap from what its located ends leave open. */
final class GapBudget {
  /** A shape that is less likely is not told. */
  private static final double LEAST_LIKELY = 0.005;

  private final Recording recording;
  private final double noiseVolts;
  private final boolean restsBefore;

  /**
   * For one recording.
   *
   * @param noiseVolts the standard deviation of samples about the supply before, quantisation in it
   * @param restsBefore whether that supply rests in its cycles
   */
  GapBudget(Recording recording, double noiseVolts, boolean restsBefore) {
    this.recording = recording;
    this.noiseVolts = noiseVolts;
    this.restsBefore = restsBefore;
  }

  /** Of a gap with both its ends. */
  UncertaintyBudget ofGap(Edge loss, Returns returns) {
    Edge settled = returns.settled();
    double timeBase = timeBaseSeconds(settled.seconds() - loss.seconds());
    List<UncertaintyBudget.Component> components =
        new ArrayList<>(components("loss", loss, restsBefore && loss.modelSeconds() > 0));
    components.addAll(components("return", settled, returns.inRest()));
    components.add(timeBase(timeBase));
    double combined =
        Math.hypot(Math.hypot(loss.standardSeconds(), settled.standardSeconds()), timeBase);
    return new UncertaintyBudget(
        components,
        CoverageFactor.of95Percent(
            combined,
            loss.samplingSeconds(),
            loss.modelSeconds(),
            settled.samplingSeconds(),
            settled.modelSeconds(),
            timeBase));
  }

  /** Of what a record without return shows: its end is no reading. */
  UncertaintyBudget ofNoReturn(Edge loss, double shownSeconds) {
    double timeBase = timeBaseSeconds(shownSeconds);
    List<UncertaintyBudget.Component> components =
        new ArrayList<>(components("loss", loss, restsBefore && loss.modelSeconds() > 0));
    components.add(timeBase(timeBase));
    double combined = Math.hypot(loss.standardSeconds(), timeBase);
    return new UncertaintyBudget(
        components,
        CoverageFactor.of95Percent(
            combined, loss.samplingSeconds(), loss.modelSeconds(), timeBase));
  }

  private List<UncertaintyBudget.Component> components(String instant, Edge edge, boolean inRest) {
    double quantised = edge.locationSeconds() * Math.sqrt(quantisedShare());
    double rest = edge.locationSeconds() * Math.sqrt(1 - quantisedShare());
    List<UncertaintyBudget.Component> components = new ArrayList<>();
    components.add(
        component(instant + ": " + BudgetSource.SAMPLE_INTERVAL.phrase(), edge.samplingSeconds()));
    components.add(
        component(
            String.format(
                Locale.ROOT,
                "%s: %s %.3g V and local slope",
                instant,
                BudgetSource.NOISE.phrase(),
                noiseVolts * Math.sqrt(1 - quantisedShare())),
            rest));
    if (recording.codeVolts() > 0) {
      components.add(
          component(
              String.format(
                  Locale.ROOT,
                  "%s: %s %.3g V",
                  instant,
                  BudgetSource.QUANTISATION.phrase(),
                  recording.codeVolts()),
              quantised));
    }
    components.add(common(instant + ": " + shapes(edge), edge.choiceSeconds()));
    components.add(
        inRest
            ? component(instant + ": " + BudgetSource.REST.phrase(), edge.modelSeconds())
            : common(instant + ": " + BudgetSource.MODELS.phrase(), edge.modelSeconds()));
    return components;
  }

  /** The shapes that remain possible, the likeliest first. */
  private static String shapes(Edge edge) {
    return edge.shapes().entrySet().stream()
        .filter(shape -> shape.getValue() >= LEAST_LIKELY || shape.getKey() == edge.shape())
        .sorted(Map.Entry.<EdgeShape, Double>comparingByValue().reversed())
        .map(shape -> shape.getKey().words() + " " + percent(shape.getValue()))
        .collect(Collectors.joining(", ", BudgetSource.SHAPE.phrase() + " (", ")"));
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }

  /**
   * The part of the scatter about the models that the converter's step makes (rectangular): where
   * an instant is located by its samples' scatter, the same part of the variance is due to it.
   */
  private double quantisedShare() {
    double step = recording.codeVolts() / Math.sqrt(12);
    return noiseVolts > 0 ? Math.min(1, step * step / (noiseVolts * noiseVolts)) : 0;
  }

  private UncertaintyBudget.Component timeBase(double seconds) {
    return new UncertaintyBudget.Component(
        BudgetSource.TIME_BASE.phrase()
            + " "
            + Wording.plain(recording.time().timeBasePpm())
            + " ppm"
            + (recording.time().timeBaseAssumed() ? ", assumed" : ""),
        1e3 * seconds,
        true);
  }

  /** Rectangular, after the accuracy that the maker of the instrument states. */
  private double timeBaseSeconds(double seconds) {
    return seconds * recording.time().timeBasePpm() * 1e-6 / Math.sqrt(3);
  }

  /** What the models leave open may be alike in all trials, as behind a slow probe. */
  private static UncertaintyBudget.Component common(String name, double standardSeconds) {
    return new UncertaintyBudget.Component(name, standardSeconds * 1e3, true);
  }

  private static UncertaintyBudget.Component component(String name, double standardSeconds) {
    return new UncertaintyBudget.Component(name, standardSeconds * 1e3, false);
  }
}

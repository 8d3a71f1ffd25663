package mainsgap.transfer.outcome;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/**
 * The figures of one trial as a flat list of names and values, the same wherever they are stored,
 * shown or compared. A value is a String, Boolean, Integer or finite Double; null where there is
 * none. Times of an instant are on the capture's own time axis, all others are durations.
 */
public final class Figures {
  /** The names of a return's cleanness, in their order. */
  public static final List<String> CLEANNESS_NAMES = CleannessAsFigures.NAMES;

  /** The names of what channels beside the output tell, in their order. */
  public static final List<String> OTHER_CHANNEL_NAMES =
      List.of(
          "holdThroughMs",
          "secondLegTransferTimeMs",
          "secondLegTransferTimeAtLeastMs",
          "secondLegExpandedUncertaintyMs",
          "secondLegCommonUncertaintyMs",
          "secondLegFurtherInterruptions",
          "secondLegLongestFurtherMs",
          "secondLegLongestFurtherExpandedUncertaintyMs",
          "secondLegEndsInFurther",
          "secondLegReason",
          "loadCurrentAfterPercent",
          "loadRodeThrough",
          "markerMs");

  /** The names of the worst break after a return, in their order. */
  public static final List<String> FURTHER_NAMES =
      List.of(
          "longestFurtherInterruptionMs",
          "longestFurtherExpandedUncertaintyMs",
          "endsInFurtherInterruption");

  /** All names, in their order. */
  public static final List<String> NAMES = names();

  private final Map<String, @Nullable Object> values = new LinkedHashMap<>();

  private static List<String> names() {
    List<String> names = new ArrayList<>();
    names.addAll(
        List.of(
            "outcome",
            "reason",
            "event",
            "interruption",
            "transferTimeMs",
            "transferTimeAtLeastMs",
            "expandedUncertaintyMs",
            "lossMs",
            "lastOpeningMs",
            "returnMs",
            "firstReturnMs",
            "furtherInterruptions",
            "deadTimeMs",
            "usableTimeMs",
            "recoveryTimeMs",
            "holdThroughMs",
            "pointOnWaveDeg",
            "phaseStepDeg",
            "frequencyHz",
            "frequencyStepMilliHz",
            "nominalVolts",
            "amplitudeStepPercent"));
    names.addAll(CLEANNESS_NAMES);
    names.addAll(FURTHER_NAMES);
    OTHER_CHANNEL_NAMES.stream().filter(name -> !names.contains(name)).forEach(names::add);
    names.add("comesBackTooLate");
    names.addAll(List.of("decisionRule", "ruleOutcome", "verdict"));
    return List.copyOf(names);
  }

  private Figures() {
    NAMES.forEach(name -> values.put(name, null));
  }

  /**
   * The figures of {@code outcome}. The reason is why a capture was refused, how it shows that
   * mains was lost though nothing was interrupted, or else why the verdict is what it is.
   */
  public static Map<String, @Nullable Object> of(
      Outcome outcome, @Nullable Judgement judgement, double nominalVolts) {
    Figures figures = new Figures();
    figures.put("outcome", "measured");
    figures.put("nominalVolts", nominalVolts);
    if (judgement != null) {
      figures.judged(judgement);
    }
    switch (outcome.kind()) {
      case MEASURED -> figures.measured((Measured) outcome);
      case NO_RETURN -> figures.noReturn((NoReturn) outcome);
      case NO_INTERRUPTION -> figures.noInterruption((NoInterruption) outcome);
      case REFUSED -> figures.refused((Refused) outcome);
    }
    return Collections.unmodifiableMap(figures.values);
  }

  private void judged(Judgement judgement) {
    put("reason", judgement.reason());
    put("decisionRule", judgement.decisionRule());
    put("ruleOutcome", judgement.ruleOutcome());
    put("verdict", judgement.verdict().name());
  }

  private void measured(Measured measured) {
    put("event", word(measured.event()));
    put("interruption", true);
    put("transferTimeMs", measured.transferMillis());
    put("expandedUncertaintyMs", measured.uncertaintyMillis());
    put("lossMs", millis(measured.lossSeconds()));
    put("lastOpeningMs", millis(measured.lastOpeningSeconds()));
    put("returnMs", millis(measured.returnSeconds()));
    put("firstReturnMs", millis(measured.firstReturnSeconds()));
    put("furtherInterruptions", measured.furtherInterruptions().count());
    further(measured.furtherInterruptions());
    put("deadTimeMs", measured.deadMillis());
    put("usableTimeMs", measured.usableMillis());
    put("recoveryTimeMs", measured.recoveryMillis());
    put("pointOnWaveDeg", measured.pointOnWaveDegrees());
    supplies(measured.supplies());
    others(measured.others());
    if (measured.cleanness() != null) {
      CleannessAsFigures.put(measured.cleanness(), this::put);
    }
  }

  private void further(FurtherInterruptions further) {
    put("longestFurtherInterruptionMs", further.longestMillis());
    put("longestFurtherExpandedUncertaintyMs", uncertaintyMillis(further));
    put("endsInFurtherInterruption", isOpen(further));
  }

  private static @Nullable Boolean isOpen(FurtherInterruptions further) {
    return further.longestMillis() == null ? null : (Boolean) further.isOpen();
  }

  private static @Nullable Double uncertaintyMillis(FurtherInterruptions further) {
    return further.longestMillis() == null ? null : (Double) further.uncertaintyMillis();
  }

  private void others(OtherChannels others) {
    put("holdThroughMs", others.holdThroughMillis());
    if (others.secondLeg() != null) {
      secondLeg(others.secondLeg());
    }
    put("loadCurrentAfterPercent", others.loadCurrentAfterPercent());
    put("loadRodeThrough", others.loadRodeThrough());
    Double marker = others.markerSeconds();
    put("markerMs", marker == null ? null : (Double) millis(marker));
  }

  private void secondLeg(OtherChannels.SecondLeg leg) {
    put("secondLegReason", leg.refused());
    if (leg.refused() != null) {
      return;
    }
    put("secondLegTransferTimeMs", leg.transferMillis());
    put("secondLegTransferTimeAtLeastMs", leg.atLeastMillis());
    put("secondLegExpandedUncertaintyMs", leg.uncertaintyMillis());
    put("secondLegCommonUncertaintyMs", leg.commonMillis());
    FurtherInterruptions further = leg.furtherInterruptions();
    put("secondLegFurtherInterruptions", further.count());
    put("secondLegLongestFurtherMs", further.longestMillis());
    put("secondLegLongestFurtherExpandedUncertaintyMs", uncertaintyMillis(further));
    put("secondLegEndsInFurther", isOpen(further));
  }

  private void noReturn(NoReturn noReturn) {
    put("event", word(noReturn.event()));
    put("interruption", true);
    put("transferTimeAtLeastMs", noReturn.atLeastMillis());
    put("comesBackTooLate", noReturn.comesBackTooLate());
    put("expandedUncertaintyMs", noReturn.uncertaintyMillis());
    put("lossMs", millis(noReturn.lossSeconds()));
    put("lastOpeningMs", millis(noReturn.lastOpeningSeconds()));
    put("deadTimeMs", noReturn.deadMillis());
    put("pointOnWaveDeg", noReturn.pointOnWaveDegrees());
    supplies(noReturn.supplies());
    others(noReturn.others());
  }

  private void noInterruption(NoInterruption none) {
    put("reason", none.proof());
    put("event", word(none.event()));
    put("interruption", false);
    put("transferTimeMs", 0.0);
    put("expandedUncertaintyMs", none.shortestVisibleMillis());
    put("lossMs", millis(none.eventSeconds()));
    put("pointOnWaveDeg", none.pointOnWaveDegrees());
    supplies(none.supplies());
    others(none.others());
  }

  private void refused(Refused refused) {
    put("outcome", "refused");
    put("reason", refused.reason());
  }

  private void supplies(Supplies supplies) {
    put("frequencyHz", supplies.frequencyHertz());
    put("frequencyStepMilliHz", supplies.frequencyStepMillihertz());
    put("amplitudeStepPercent", supplies.amplitudeStepPercent());
    put("phaseStepDeg", supplies.phaseStepDegrees());
  }

  /** A number that is not finite is no value. */
  private void put(String name, @Nullable Object value) {
    values.put(name, value instanceof Double number && !Double.isFinite(number) ? null : value);
  }

  private static double millis(double seconds) {
    return seconds * 1e3;
  }

  private static String word(Event event) {
    return event.name().toLowerCase(Locale.ROOT);
  }
}

package mainsgap.transfer.tolerance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Wording;

/**
 * What the gap of one outcome means for loads: its standing on the published curves and the loads
 * that ride through it. It judges nothing: the curves are no limits for a backup supply.
 *
 * @param gap as the curves see it
 * @param curves a finding for each curve
 * @param swells where the overshoot behind the return stands, on each curve that knows swells;
 *     empty where it stays within the steady band of all supplies
 * @param breakTime the band of the break
 * @param dipClass what EN 50160 says of it, as an RMS instrument would read it
 * @param loads what is known of loads
 * @param notes what the gap alone does not tell
 */
public record VoltageTolerance(
    VoltageDeviation gap,
    List<ToleranceFinding> curves,
    List<ToleranceFinding> swells,
    BreakTime breakTime,
    String dipClass,
    List<LoadRideThrough> loads,
    List<String> notes) {

  /** Takes its own copies. */
  public VoltageTolerance {
    curves = List.copyOf(curves);
    swells = List.copyOf(swells);
    loads = List.copyOf(loads);
    notes = List.copyOf(notes);
  }

  /** Holds an outcome against all that the program knows; empty where it has no gap to hold. */
  public static Optional<VoltageTolerance> of(Outcome outcome, MeasuringTask task) {
    return VoltageDeviation.ofGap(outcome)
        .map(
            gap ->
                new VoltageTolerance(
                    gap,
                    found(PublishedCurves.all(), gap, task),
                    VoltageDeviation.ofSwell(outcome)
                        .map(swell -> found(withSwells(), swell, task))
                        .orElse(List.of()),
                    BreakTime.of(outcome, gap),
                    dipClass(outcome),
                    LoadRideThrough.all(),
                    notes(outcome)));
  }

  private static List<ToleranceFinding> found(
      List<ToleranceCurve> curves, VoltageDeviation deviation, MeasuringTask task) {
    return curves.stream()
        .map(curve -> curve.find(deviation, task.nominalVolts(), task.nominalFrequencyHertz()))
        .toList();
  }

  private static List<ToleranceCurve> withSwells() {
    return PublishedCurves.all().stream().filter(curve -> !curve.swells().isEmpty()).toList();
  }

  /** A sentence for each curve, for the swell, for the band and for EN 50160. */
  public List<String> sentences() {
    List<String> sentences =
        new ArrayList<>(curves.stream().map(ToleranceFinding::sentence).toList());
    swells.forEach(finding -> sentences.add("Overshoot of the return on " + finding.sentence()));
    sentences.add("Break time: " + breakTime.words() + " (a band, no class of IEC 62040-3)");
    sentences.add("EN 50160: " + dipClass);
    sentences.addAll(notes);
    return sentences;
  }

  /** A sentence for each kind of load. */
  public List<String> loadSentences() {
    return loads.stream().map(load -> load.sentence(gap)).toList();
  }

  private static List<String> notes(Outcome outcome) {
    List<String> notes = new ArrayList<>();
    if (outcome instanceof Measured measured) {
      String usable = Wording.usable(measured.transferMillis(), measured.usableMillis());
      if (!usable.isEmpty()) {
        notes.add("The transfer time alone is held against the curves" + usable);
      }
      if (measured.furtherInterruptions().count() > 0) {
        notes.add(
            "Further interruptions ("
                + measured.furtherInterruptions().count()
                + ") are not held against the curves");
      }
    }
    return notes;
  }

  /** The floor is that of the gap itself; an RMS reading is never shorter than half a cycle. */
  private static String dipClass(Outcome outcome) {
    if (!(outcome instanceof Measured measured)) {
      return outcome instanceof NoInterruption none
          ? DipClass.of(0, none.shortestVisibleMillis())
          : "not classified, the end was not seen";
    }
    double millis = measured.transferMillis();
    if (millis < DipClass.LEAST_MILLIS) {
      return DipClass.of(0, millis);
    }
    HalfCycleRms.Reading reading =
        HalfCycleRms.ofCleanGap(
            millis, measured.pointOnWaveDegrees(), measured.supplies().frequencyHertz());
    return DipClass.of(reading.percent(), reading.millis())
        + ", a clean gap of this length reads as "
        + Wording.plain(Math.rint(10 * reading.percent()) / 10)
        + " % for "
        + Wording.span(reading.millis())
        + " by Urms(1/2)";
  }
}

package mainsgap.transfer.supply;

import java.util.ArrayList;
import java.util.List;

/**
 * The settled cycle of an output with steps, each step placed as well as the samples of all fitted
 * cycles place it: a mean cycle smears its steps over some of its bins.
 */
public final class OwnSteps {
  /** About a step samples spread by so many usual spreads. */
  private static final double STEP_SPREADS = 3;

  /** The mean of a few samples on both sides of a step spreads by this share of nominal peak. */
  private static final double STEP_SPREAD_SHARE_OF_PEAK = 0.01;

  /** What moves by less than this share of nominal peak is a ring or a slope, and no step. */
  private static final double SMALLEST_SHARE_OF_PEAK = 0.1;

  /** The fit's phase is carried to cycles before it no better than this. */
  private static final double CARRIED_SECONDS = 5e-6;

  private final Recording recording;
  private final Supply supply;
  private final double padSeconds;
  private final List<Step> steps;

  /**
   * What the supply does at a time: it may be anywhere between the two where it steps.
   *
   * @param spreadVolts the standard deviation about it
   */
  public record Supplied(double lowVolts, double highVolts, double spreadVolts) {
    /** From the nearest voltage that it may have, in volts. */
    public double distanceVolts(double volts) {
      return Math.max(0, Math.max(lowVolts - volts, volts - highVolts));
    }
  }

  /**
   * A step, its times on the time axis within the first fitted cycle.
   *
   * @param from where the mean cycle begins to smear it
   * @param earliest up to here all samples lie at the voltage before
   * @param latest from here on all samples lie at the voltage after
   * @param to where the mean cycle smears it no longer
   */
  private record Step(
      double from,
      double earliest,
      double latest,
      double to,
      double beforeVolts,
      double afterVolts) {}

  public OwnSteps(Recording recording, Supply supply) {
    this.recording = recording;
    this.supply = supply;
    this.padSeconds = Math.max(CARRIED_SECONDS, recording.time().intervalSeconds() / 2);
    this.steps = found();
  }

  /** What the supply does at a time. */
  public Supplied at(double seconds) {
    for (Step step : steps) {
      double at = step.from + cycled(seconds - step.from);
      if (at <= step.to) {
        double before = at > step.latest + padSeconds ? step.afterVolts : step.beforeVolts;
        double after = at < step.earliest - padSeconds ? step.beforeVolts : step.afterVolts;
        return new Supplied(
            Math.min(before, after), Math.max(before, after), supply.usualSpreadVolts());
      }
    }
    double volts = supply.model().voltsAt(seconds);
    return new Supplied(volts, volts, supply.model().spreadVoltsAt(seconds));
  }

  private double cycleSeconds() {
    return 1 / supply.model().frequencyHertz();
  }

  /** A time less whole cycles, from 0 on. */
  private double cycled(double seconds) {
    double cycles = seconds / cycleSeconds();
    return (cycles - Math.floor(cycles)) * cycleSeconds();
  }

  private List<Step> found() {
    int cycle = (int) Math.ceil(cycleSeconds() / recording.time().intervalSeconds());
    int start = supply.from();
    while (start < supply.from() + cycle && isStep(start)) {
      start++;
    }
    List<Step> found = new ArrayList<>();
    int from = start;
    while (from < start + cycle) {
      int to = from;
      while (isStep(to) && to < start + 2 * cycle) {
        to++;
      }
      if (to > from) {
        addStep(found, from - 1, to);
      }
      from = to + 1;
    }
    return found;
  }

  /** Smeared over a bin, or between two of them. */
  private boolean isStep(int index) {
    double spread = supply.model().spreadVoltsAt(recording.time().secondsAt(index));
    double smeared =
        Math.max(
            STEP_SPREADS * supply.usualSpreadVolts(),
            STEP_SPREAD_SHARE_OF_PEAK * recording.peakVolts());
    double moved = Math.max(movedVolts(index), movedVolts(index + 1));
    return spread > smeared || moved > SMALLEST_SHARE_OF_PEAK * recording.peakVolts();
  }

  private double movedVolts(int index) {
    double here = supply.model().voltsAt(recording.time().secondsAt(index));
    return Math.abs(here - supply.model().voltsAt(recording.time().secondsAt(index - 1)));
  }

  /** Of all samples that fall between two of the first cycle, in any of the fitted ones. */
  private void addStep(List<Step> found, int first, int last) {
    double from = recording.time().secondsAt(first);
    double to = recording.time().secondsAt(last);
    double before = supply.model().voltsAt(from);
    double after = supply.model().voltsAt(to);
    if (Math.abs(after - before) < SMALLEST_SHARE_OF_PEAK * recording.peakVolts()) {
      return;
    }
    double lastBefore = from;
    double firstAfter = to;
    int cycles = (int) Math.ceil((supply.to() - first) / (cycleSeconds() * rate()));
    for (int k = 0; k < cycles; k++) {
      double shift = k * cycleSeconds();
      int end = (int) Math.min(supply.to() - 1, recording.time().indexAt(to + shift));
      for (int i = (int) Math.ceil(recording.time().indexAt(from + shift)); i <= end; i++) {
        double volts = recording.volts()[i];
        double at = recording.time().secondsAt(i) - shift;
        if (Math.abs(volts - before) < Math.abs(volts - after)) {
          lastBefore = Math.max(lastBefore, at);
        } else {
          firstAfter = Math.min(firstAfter, at);
        }
      }
    }
    found.add(
        new Step(
            from,
            Math.min(lastBefore, firstAfter),
            Math.max(lastBefore, firstAfter),
            to,
            before,
            after));
  }

  private double rate() {
    return recording.time().sampleRateHertz();
  }
}

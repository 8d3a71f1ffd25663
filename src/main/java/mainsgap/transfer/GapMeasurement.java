package mainsgap.transfer;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import mainsgap.signal.PeriodicModel;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/** Locates the ends of a gap whose runs are known, and takes the figures between them. */
final class GapMeasurement {
  /** How far the samples about an instant are looked at, before and after it. */
  private static final double REACH_SECONDS = 4e-3;

  /** A run's border is off by less than this. */
  private static final double SLACK_SECONDS = 1.5e-3;

  /** Models are not better than this share of nominal peak, however quiet the record. */
  private static final double SPREAD_FLOOR_SHARE_OF_PEAK = 0.001;

  private static final Set<EdgeShape> LEAVING = EnumSet.of(EdgeShape.ABRUPT, EdgeShape.APPROACH);
  private static final Set<EdgeShape> ARRIVING = EnumSet.allOf(EdgeShape.class);

  /** For a 95 % interval of a combined, nearly normal uncertainty. */
  private static final double COVERAGE_FACTOR = 2;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final @Nullable Waveform mains;

  GapMeasurement(
      Recording recording,
      Supply before,
      @Nullable Supply after,
      GapTopology topology,
      @Nullable Waveform mains) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = topology.runs();
    this.residue = topology.residue();
    this.mains = mains;
  }

  Outcome outcome() {
    int firstGap = indexOf(Segmentation.Part.GAP, 0);
    if (firstGap < 0) {
      return new UnbrokenSupply(recording, before.harmonics(), mains).changedTo(after);
    }
    Edge loss = loss(firstGap);
    Edge lastOpening = lastOpening(firstGap, loss);
    int firstAfter = indexOf(Segmentation.Part.AFTER, 0);
    if (after == null || firstAfter < 0) {
      return noReturn(loss, lastOpening);
    }
    Edge firstReturn = arrival(firstAfter, runs.get(firstAfter - 1));
    int lastMake = lastMake(firstAfter, firstReturn);
    Edge settled = lastMake == firstAfter ? firstReturn : arrival(lastMake, runs.get(lastMake - 1));
    return measured(loss, lastOpening, firstReturn, settled, after);
  }

  private int indexOf(Segmentation.Part part, int start) {
    for (int k = start; k < runs.size(); k++) {
      if (runs.get(k).part() == part) {
        return k;
      }
    }
    return -1;
  }

  private Edge loss(int gapIndex) {
    Segmentation.Run gap = runs.get(gapIndex);
    int slack = recording.samplesIn(SLACK_SECONDS);
    int reach = recording.samplesIn(REACH_SECONDS);
    int from = Math.max(0, gap.from() - reach);
    int to = Math.min(gap.to(), gap.from() + reach);
    int first = Math.max(from + 1, gap.from() - slack);
    if (gapIndex >= 2) {
      first = Math.max(first, runs.get(gapIndex - 1).from());
    }
    int last = Math.max(first, Math.min(to - 1, gap.from() + slack));
    refuseClipped(first, last, "loss");
    return locate(from, to, first, last, before.model(), null, LEAVING);
  }

  private Edge lastOpening(int firstGap, Edge loss) {
    int last = firstGap;
    for (int k = firstGap + 1; k < runs.size(); k++) {
      if (runs.get(k).part() == Segmentation.Part.AFTER) {
        break;
      }
      if (runs.get(k).part() == Segmentation.Part.GAP) {
        last = k;
      }
    }
    return last == firstGap ? loss : loss(last);
  }

  /** The make at the start of run {@code index}, out of {@code dead}. */
  private Edge arrival(int index, Segmentation.Run dead) {
    Segmentation.Run fed = runs.get(index);
    int slack = recording.samplesIn(SLACK_SECONDS);
    int reach = recording.samplesIn(2 * REACH_SECONDS);
    int from = Math.max(dead.from(), fed.from() - 4 * reach);
    int end = index + 1 < runs.size() ? fed.to() : recording.length();
    int to = Math.min(end, fed.from() + reach);
    int first = from + 1;
    int last = Math.max(first, Math.min(to - 1, fed.from() + slack));
    refuseClipped(fed.from() - slack, Math.min(to, fed.from() + slack), "return");
    if (after == null) {
      throw new IllegalStateException("an arrival needs a supply after");
    }
    return locate(from, to, first, last, null, after.model(), ARRIVING);
  }

  private void refuseClipped(int first, int last, String instant) {
    if (recording.isClippedIn(first, last + 1)) {
      throw new CannotMeasureException(
          "clipped in the samples that fix the "
              + instant
              + ": choose a larger range, at least 1.5 times the nominal peak of "
              + Math.round(recording.peakVolts())
              + " V");
    }
  }

  /** Null stands for the residue. */
  private Edge locate(
      int from,
      int to,
      int first,
      int last,
      @Nullable PeriodicModel earlier,
      @Nullable PeriodicModel later,
      Set<EdgeShape> shapes) {
    int n = to - from;
    double[] volts = new double[n];
    double[] earlierVolts = new double[n];
    double[] laterVolts = new double[n];
    double[] earlierSpread = new double[n];
    double[] laterSpread = new double[n];
    for (int i = 0; i < n; i++) {
      double seconds = recording.time().secondsAt(from + i);
      volts[i] = recording.volts()[from + i];
      earlierVolts[i] = voltsOf(earlier, seconds);
      laterVolts[i] = voltsOf(later, seconds);
      earlierSpread[i] = spreadOf(earlier, seconds);
      laterSpread[i] = spreadOf(later, seconds);
    }
    mainsgap.signal.TimeAxis time = recording.time();
    EdgeWindow window =
        new EdgeWindow(
            volts,
            earlierVolts,
            laterVolts,
            earlierSpread,
            laterSpread,
            new mainsgap.signal.TimeAxis(
                time.secondsAt(from), time.intervalSeconds(), n, time.timeBasePpm()),
            before.informationShare());
    return EdgeFit.locate(window, first - from, last - from, shapes);
  }

  private double voltsOf(@Nullable PeriodicModel supply, double seconds) {
    return supply == null ? residue.voltsAt(seconds) : supply.voltsAt(seconds);
  }

  private double spreadOf(@Nullable PeriodicModel supply, double seconds) {
    double floor = SPREAD_FLOOR_SHARE_OF_PEAK * recording.peakVolts();
    double spread =
        supply == null
            ? Math.max(residue.spreadVolts(), before.harmonics().noiseVolts())
            : supply.spreadVoltsAt(seconds);
    return Math.max(floor, spread);
  }

  /** The last make of those that are each broken again within one cycle. */
  private int lastMake(int firstAfter, Edge firstReturn) {
    int last = firstAfter;
    double madeAt = firstReturn.seconds();
    for (int k = firstAfter + 1; k + 1 < runs.size(); k++) {
      Segmentation.Run run = runs.get(k);
      if (run.part() == Segmentation.Part.BREAK) {
        double brokenAt = recording.time().secondsAt(run.from());
        if (brokenAt - madeAt > recording.task().cycleSeconds()) {
          break;
        }
        last = k + 1;
        madeAt = recording.time().secondsAt(run.to());
      }
    }
    return last;
  }

  private Outcome noReturn(Edge loss, Edge lastOpening) {
    double end = recording.time().secondsAt(recording.length() - 1);
    GapFigures figures = new GapFigures(recording, loss.seconds(), end);
    return new NoReturn(
        recording.task().event(),
        loss.seconds(),
        lastOpening.seconds(),
        (end - loss.seconds()) * 1e3,
        COVERAGE_FACTOR * 1e3 * Math.hypot(loss.samplingSeconds(), loss.locationSeconds()),
        before.model().angleDegreesAt(loss.seconds()),
        figures.deadMillis(),
        new Supplies(before.model().frequencyHertz(), null, null, null));
  }

  private Outcome measured(
      Edge loss, Edge lastOpening, Edge firstReturn, Edge settled, Supply following) {
    GapFigures figures = new GapFigures(recording, loss.seconds(), settled.seconds());
    double transferMillis = (settled.seconds() - loss.seconds()) * 1e3;
    return new Measured(
        recording.task().event(),
        loss.seconds(),
        lastOpening.seconds(),
        firstReturn.seconds(),
        settled.seconds(),
        transferMillis,
        budget(loss, settled, transferMillis),
        furtherInterruptions(settled),
        figures.deadMillis(),
        figures.usableMillis(following),
        figures.recoveryMillis(following),
        before.model().angleDegreesAt(loss.seconds()),
        SupplySteps.between(before, following, settled.seconds(), recording.task()));
  }

  private int furtherInterruptions(Edge settled) {
    int count = 0;
    for (Segmentation.Run run : runs) {
      if (run.part() == Segmentation.Part.BREAK
          && recording.time().secondsAt(run.from()) > settled.seconds()) {
        count++;
      }
    }
    return count;
  }

  private UncertaintyBudget budget(Edge loss, Edge settled, double transferMillis) {
    double ppm = recording.time().timeBasePpm();
    return new UncertaintyBudget(
        List.of(
            component("loss: sample interval", loss.samplingSeconds()),
            component("loss: noise, slope and choice of model", loss.locationSeconds()),
            component("return: sample interval", settled.samplingSeconds()),
            component("return: noise, slope and choice of model", settled.locationSeconds()),
            new UncertaintyBudget.Component(
                "time base " + ppm + " ppm", transferMillis * ppm * 1e-6 / Math.sqrt(3), true)),
        COVERAGE_FACTOR);
  }

  private static UncertaintyBudget.Component component(String name, double standardSeconds) {
    return new UncertaintyBudget.Component(name, standardSeconds * 1e3, false);
  }
}

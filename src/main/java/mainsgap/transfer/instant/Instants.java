package mainsgap.transfer.instant;

import java.util.EnumSet;
import java.util.Set;
import java.util.function.IntPredicate;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeFit;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.edge.EdgeWindow;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Locates losses and returns in one recording: lays the samples about an instant beside the models
 * on both sides of it and hands them to {@link EdgeFit}. A long window is searched in averages of
 * neighbouring samples first and at the full rate about what was found.
 */
public final class Instants {
  /** Models are not better than this share of nominal peak, however quiet the record. */
  private static final double SPREAD_FLOOR_SHARE_OF_PEAK = 0.001;

  /** Models closer than this share of nominal peak are not told apart, however many samples. */
  private static final double ALIKE_SHARE_OF_PEAK = 0.004;

  /** A model may be wrong by this share of nominal peak: drift, rounding, a shape it has not. */
  private static final double MODEL_ERROR_SHARE_OF_PEAK = 0.003;

  /** A spread of so many usual ones belongs to a step of the supply's own cycle. */
  private static final double STEP_SPREADS = 2;

  /** Longer windows are averaged down to about this. */
  private static final int MOST_SAMPLES = 1_500;

  /** The full-rate search reaches so many averages about what was found. */
  private static final int FULL_RATE_REACH = 6;

  private static final Set<EdgeShape> LEAVING = EnumSet.of(EdgeShape.ABRUPT, EdgeShape.APPROACH);
  private static final Set<EdgeShape> ARRIVING = EnumSet.allOf(EdgeShape.class);

  /** The steps of a supply's own cycle would be taken for transients. */
  private static final Set<EdgeShape> ARRIVING_IN_STEPS = EnumSet.of(EdgeShape.ABRUPT);

  /** Shapes that begin with a step or a kink, which the full rate shows better. */
  private static final Set<EdgeShape> STEPS =
      EnumSet.of(EdgeShape.ABRUPT, EdgeShape.APPROACH, EdgeShape.RING);

  private static final Set<EdgeShape> STEPS_AT_FULL_RATE = LEAVING;

  private final Recording recording;
  private final Supply before;
  private final Residue residue;
  private final @Nullable Supply after;

  /** Samples {@code from} to {@code to}, of which the later model starts in first to last. */
  record Search(int from, int to, int first, int last) {
    int averaged() {
      return Math.max(1, (to - from) / MOST_SAMPLES);
    }
  }

  Instants(Recording recording, Supply before, Residue residue, @Nullable Supply after) {
    this.recording = recording;
    this.before = before;
    this.residue = residue;
    this.after = after;
  }

  /** The instant at which the supply before is left for the residue. */
  Edge leaving(Search search) {
    return locate(search, before, null, LEAVING, i -> false);
  }

  /** The instant at which the residue is left for the supply after. */
  Edge arriving(Search search) {
    return arriving(search, i -> false);
  }

  /** The same; samples that are left out do not count for the shape of the arrival. */
  Edge arriving(Search search, IntPredicate isLeftOut) {
    Supply later = arrived();
    return locate(search, null, later, later.hasSteps() ? ARRIVING_IN_STEPS : ARRIVING, isLeftOut);
  }

  private Supply arrived() {
    if (after == null) {
      throw new IllegalStateException("nothing arrives without a supply after");
    }
    return after;
  }

  /** Null stands for the residue. */
  private Edge locate(
      Search search,
      @Nullable Supply earlier,
      @Nullable Supply later,
      Set<EdgeShape> shapes,
      IntPredicate isLeftOut) {
    int averaged = search.averaged();
    EdgeWindow window = window(search, averaged, earlier, later);
    for (int k = 0; k < window.length(); k++) {
      if (isLeftOut.test(search.from + k * averaged)) {
        window.leaveOut(k, recording.peakVolts());
      }
    }
    int first = (search.first - search.from) / averaged;
    int last = Math.min(window.length() - 1, (search.last - search.from) / averaged);
    Edge edge = EdgeFit.locate(window, Math.max(1, first), Math.max(1, last), shapes);
    boolean isFine = averaged == 1 && edge.shape() != EdgeShape.RING;
    return isFine || !STEPS.contains(edge.shape())
        ? edge
        : atFullRate(search, averaged, edge, earlier, later);
  }

  private Edge atFullRate(
      Search search, int averaged, Edge coarse, @Nullable Supply earlier, @Nullable Supply later) {
    int centre = (int) Math.round(recording.time().indexAt(coarse.seconds()));
    int spread = (int) Math.ceil(4 * coarse.locationSeconds() / recording.time().intervalSeconds());
    int reach = FULL_RATE_REACH * averaged + Math.min(spread, MOST_SAMPLES);
    int from = Math.max(search.from, centre - reach);
    int to = Math.min(search.to, centre + reach);
    EdgeWindow bare = window(new Search(from, to, from, to), 1, earlier, later);
    double[] laterVolts = bare.laterVolts().clone();
    for (int i = from; i < to; i++) {
      int thin = Math.min(coarse.laterVolts().length - 1, (i - search.from) / averaged);
      if (coarse.shape() == EdgeShape.RING) {
        laterVolts[i - from] = coarse.laterVolts()[thin];
      }
    }
    EdgeWindow window =
        new EdgeWindow(
            bare.volts(),
            bare.earlierVolts(),
            laterVolts,
            bare.earlierSpreadVolts(),
            bare.laterSpreadVolts(),
            bare.alike(),
            bare.spreadRatio(),
            bare.time(),
            bare.informationShare(),
            bare.modelErrorVolts());
    int first = Math.max(1, search.first - from);
    int last = Math.max(first, Math.min(window.length() - 1, search.last - from));
    Set<EdgeShape> shapes =
        later != null && later.hasSteps() ? ARRIVING_IN_STEPS : STEPS_AT_FULL_RATE;
    Edge fine = EdgeFit.locate(window, first, last, shapes);
    return new Edge(
        fine.seconds(),
        fine.samplingSeconds(),
        fine.locationSeconds(),
        fine.choiceSeconds(),
        fine.modelSeconds(),
        coarse.shape(),
        coarse.shape() == EdgeShape.RING ? coarse.shapes() : fine.shapes(),
        coarse.window(),
        coarse.laterVolts());
  }

  private EdgeWindow window(
      Search search, int averaged, @Nullable Supply earlier, @Nullable Supply later) {
    int n = (search.to - search.from) / averaged;
    TimeAxis time = recording.time();
    EdgeWindow window =
        new EdgeWindow(
            new double[n],
            new double[n],
            new double[n],
            new double[n],
            new double[n],
            new boolean[n],
            usualSpread(later, averaged) / usualSpread(earlier, averaged),
            new TimeAxis(
                time.secondsAt(search.from + (averaged - 1) / 2.0),
                averaged * time.intervalSeconds(),
                n,
                time.timeBasePpm()),
            averaged == 1 ? before.informationShare() : 1,
            MODEL_ERROR_SHARE_OF_PEAK * recording.peakVolts());
    double usual = Math.max(usualSpread(earlier, averaged), usualSpread(later, averaged));
    for (int k = 0; k < n; k++) {
      fill(window, k, search.from + k * averaged, averaged, earlier, later);
      blurWhereAlike(window, k, STEP_SPREADS * usual);
    }
    return window;
  }

  /** Averages of correlated neighbours spread less than one sample, but not by the root of n. */
  private double averagedSpread(double spreadVolts, int averaged) {
    double floor = SPREAD_FLOOR_SHARE_OF_PEAK * recording.peakVolts();
    double independent = Math.max(1, before.informationShare() * averaged);
    return Math.max(floor, spreadVolts / Math.sqrt(independent));
  }

  private double usualSpread(@Nullable Supply supply, int averaged) {
    double spread = supply == null ? residueSpread() : supply.usualSpreadVolts();
    return averagedSpread(spread, averaged);
  }

  private double residueSpread() {
    return Math.max(residue.spreadVolts(), before.usualSpreadVolts());
  }

  private void fill(
      EdgeWindow window,
      int k,
      int from,
      int count,
      @Nullable Supply earlier,
      @Nullable Supply later) {
    for (int i = from; i < from + count; i++) {
      double seconds = recording.time().secondsAt(i);
      window.volts()[k] += recording.volts()[i] / count;
      window.earlierVolts()[k] += voltsOf(earlier, seconds) / count;
      window.laterVolts()[k] += voltsOf(later, seconds) / count;
    }
    double middle = recording.time().secondsAt(from + (count - 1) / 2.0);
    window.earlierSpreadVolts()[k] = averagedSpread(spreadOf(earlier, middle), count);
    window.laterSpreadVolts()[k] = averagedSpread(spreadOf(later, middle), count);
  }

  /**
   * Where the models can't be told apart, neither their values nor their spreads may tell; and
   * where one of them steps at an uncertain place, the other is no better known.
   */
  private void blurWhereAlike(EdgeWindow window, int k, double stepVolts) {
    double earlier = window.earlierVolts()[k];
    double later = window.laterVolts()[k];
    double spread = Math.max(window.earlierSpreadVolts()[k], window.laterSpreadVolts()[k]);
    if (Math.abs(earlier - later) < ALIKE_SHARE_OF_PEAK * recording.peakVolts()) {
      window.earlierVolts()[k] = (earlier + later) / 2;
      window.laterVolts()[k] = (earlier + later) / 2;
      window.earlierSpreadVolts()[k] = spread;
      window.laterSpreadVolts()[k] = spread;
      window.alike()[k] = true;
    } else if (spread > stepVolts) {
      window.earlierSpreadVolts()[k] = spread;
      window.laterSpreadVolts()[k] = spread;
    }
  }

  private double voltsOf(@Nullable Supply supply, double seconds) {
    return supply == null ? residue.voltsAt(seconds) : supply.model().voltsAt(seconds);
  }

  private double spreadOf(@Nullable Supply supply, double seconds) {
    return supply == null ? residueSpread() : supply.model().spreadVoltsAt(seconds);
  }
}

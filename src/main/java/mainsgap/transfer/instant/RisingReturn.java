package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.ResidueFit;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Locates the return of a supply whose amplitude comes up over milliseconds: there is no step, only
 * a kink. What was left on the load, the instant, how fast the amplitude rises and the amplitude
 * and phase of the supply are fitted together from the loss to the risen supply. A residue that was
 * fitted across the kink bends towards the rise and makes it early: the one found so far, a plain
 * level, and one fitted anew up to the instant are tried, and the best for its unknowns is kept.
 */
final class RisingReturn {
  /** A supply that comes at once follows its model after this. */
  private static final double AT_ONCE_SECONDS = 1e-3;

  private static final double AT_ONCE_SHARE_OF_PEAK = 0.006;
  private static final double AT_ONCE_NOISES = 1.3;

  /** An explanation that leaves more than this share of nominal peak is none. */
  private static final double EXPLAINED_SHARE_OF_PEAK = 0.012;

  private static final double EXPLAINED_NOISES = 1.5;

  /** Where breaks seem to be, a rise has to explain better that there are none. */
  private static final double PROVED_SHARE_OF_PEAK = 0.005;

  private static final double PROVED_NOISES = 1.2;
  private static final int FEWEST_SAMPLES = 40;

  /**
   * Another place replaces the one found if it explains by more than this (-2 ln p; own choice).
   */
  private static final double ELSEWHERE = 60;

  /**
   * What rises faster is told from no bouncing make (contacts bounce for less, common practice).
   */
  static final double BOUNCE_SECONDS = 1.5e-3;

  /**
   * A return that explains the samples better than what was found.
   *
   * @param rises whether the supply comes up from it on, and not at once: then nothing bounces
   */
  record Located(Edge edge, boolean rises) {}

  private final Recording recording;
  private final Supply before;
  private final Supply after;
  private final Residue residue;
  private final double noiseVolts;
  private final int from;
  private final int to;

  /**
   * Takes what is known.
   *
   * @param opened the last opening before
   */
  RisingReturn(Recording recording, Supply before, Residue residue, Supply after, Edge opened) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.residue = residue;
    this.noiseVolts = before.usualSpreadVolts();
    int guard = recording.samplesIn(2 * opened.standardSeconds()) + 2;
    this.from = (int) Math.ceil(recording.time().indexAt(opened.seconds())) + guard;
    this.to = Math.min(recording.length(), after.from() + (int) (recording.samplesPerCycle() / 2));
  }

  /**
   * The return; null where what was found stands: the supply came at once, there, or nothing
   * explains the samples better.
   *
   * @param found the return as a shape of its own
   * @param bounced whether breaks were found about it
   */
  @Nullable Located locate(Edge found, boolean bounced) {
    boolean isShort = to - from < FEWEST_SAMPLES;
    return after.hasSteps() || isShort || isAtOnce(found) ? null : risen(found, bounced);
  }

  private boolean isAtOnce(Edge rough) {
    if (rough.shape() == EdgeShape.RING) {
      return false;
    }
    double made = recording.time().indexAt(rough.seconds());
    int first = (int) Math.ceil(made + AT_ONCE_SECONDS / recording.time().intervalSeconds());
    int end = (int) Math.min(to, made + recording.samplesPerCycle());
    double squares = 0;
    for (int i = first; i < end; i++) {
      double seconds = recording.time().secondsAt(i);
      double deviation = recording.volts()[i] - after.model().voltsAt(seconds);
      squares += deviation * deviation;
    }
    double rms = Math.sqrt(squares / Math.max(1, end - first));
    return rms
        < Math.max(
            AT_ONCE_SHARE_OF_PEAK * recording.peakVolts(),
            AT_ONCE_NOISES * Math.max(noiseVolts, after.usualSpreadVolts()));
  }

  private @Nullable Located risen(Edge rough, boolean bounced) {
    RiseSearch search = search();
    RiseSearch.Found best = search.best();
    RiseFit fit = search.fit();
    double spread = search.spreadVolts();
    double averaged = noiseVolts / Math.sqrt(fit.averaged());
    double share = bounced ? PROVED_SHARE_OF_PEAK : EXPLAINED_SHARE_OF_PEAK;
    double noises = bounced ? PROVED_NOISES : EXPLAINED_NOISES;
    if (!(spread < Math.max(share * recording.peakVolts(), noises * averaged))) {
      return null;
    }
    double told = Math.max(spread, averaged);
    double gained = fit.squares(at -> voltsOf(rough, at)) - best.squares();
    if (best.riseSeconds() > BOUNCE_SECONDS) {
      boolean isRise = bounced || gained > 0;
      return isRise ? new Located(edge(search, told, rough), true) : null;
    }
    boolean isAtOnce = !bounced && gained > ELSEWHERE * told * told;
    Edge atOnce = isAtOnce ? atOnce(best.seconds()) : null;
    return atOnce == null ? null : new Located(atOnce, false);
  }

  /**
   * A supply that comes at once, but where the residue that was found does not reach: located anew
   * out of all that lies before.
   */
  private @Nullable Edge atOnce(double seconds) {
    int made = (int) recording.time().indexAt(seconds);
    if (made - from < FEWEST_SAMPLES) {
      return null;
    }
    Residue upTo = ResidueFit.fit(recording, from, made, noiseVolts);
    int slack = recording.samplesIn(AT_ONCE_SECONDS);
    int reach = recording.samplesIn(GapSearches.REACH_SECONDS);
    int first = Math.max(from, made - reach);
    int end = Math.min(recording.length(), made + 2 * reach);
    int last = Math.min(end - 1, made + slack);
    return new Instants(recording, before, upTo, after)
        .arriving(new Instants.Search(first, end, Math.max(first + 1, made - slack), last));
  }

  /**
   * The search from the residue that explains the samples best for its number of unknowns, and with
   * the supply as it is once it has risen.
   */
  private RiseSearch search() {
    Residue level = Residue.level(0, residue.spreadVolts(), residue.explainedTo());
    RisingStretch stretch = new RisingStretch(recording, level, after, from, to);
    RiseSearch found = RiseSearch.in(stretch);
    RiseSearch.Found best = found.best();
    RisingStretch risen = stretch.risenBy(best.rise(), best.seconds(), best.riseSeconds());
    RiseSearch again = found.again(risen);
    if (again.best().squares() < best.squares()) {
      stretch = risen;
      found = again;
    }
    if (residue.unknowns() == 1) {
      return found;
    }
    found = better(found, RiseSearch.in(stretch.from(residue)), residue);
    int begun = (int) recording.time().indexAt(found.best().seconds());
    if (begun - from < FEWEST_SAMPLES) {
      return found;
    }
    Residue anew = ResidueFit.fit(recording, from, begun, noiseVolts);
    return anew.unknowns() == 1 ? found : better(found, found.again(stretch.from(anew)), anew);
  }

  private RiseSearch better(RiseSearch simple, RiseSearch richer, Residue residueOfRicher) {
    int averages = richer.fit().freedom();
    double spread = Math.min(simple.spreadVolts(), richer.spreadVolts());
    double price = (residueOfRicher.unknowns() - 1) * Math.log(averages) * spread * spread;
    return richer.best().squares() + price < simple.best().squares() ? richer : simple;
  }

  private double voltsOf(Edge rough, double seconds) {
    if (seconds < rough.seconds()) {
      return residue.voltsAt(seconds);
    }
    return rough.covers(seconds) ? rough.laterVoltsAt(seconds) : after.model().voltsAt(seconds);
  }

  private Edge edge(RiseSearch search, double spread, Edge rough) {
    RiseSearch.Instant instant = search.instant(spread);
    return new Edge(
        instant.seconds(),
        recording.time().intervalSeconds() / Math.sqrt(12),
        instant.standardSeconds(),
        0,
        search.best().rise().shape(),
        rough.window(),
        rough.laterVolts());
  }
}

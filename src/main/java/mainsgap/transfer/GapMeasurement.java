package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/** Locates the ends of a gap whose runs are known, and takes the figures between them. */
final class GapMeasurement {
  /** How far the samples about an instant are looked at, before and after it. */
  private static final double REACH_SECONDS = 4e-3;

  /** A run's border is off by less than this. */
  private static final double SLACK_SECONDS = 1.5e-3;

  private static final double COMES_BACK_SHARE_OF_NOMINAL = 0.2;

  /** Shorter gaps are not told from notches. */
  private static final double SHORTEST_GAP_SECONDS = 0.3e-3;

  private static final double APART_SHARE_OF_PEAK = 0.08;

  /** Contacts bounce, supplies start softly: not all of a gap lies at the residue. */
  private static final double LEFT_SHARE = 0.3;

  /** Any voltage crosses the supply before now and then. */
  private static final double FOLLOWING_SHARE = 0.5;

  /** For a 95 % interval of a combined, nearly normal uncertainty. */
  private static final double COVERAGE_FACTOR = 2;

  private final Recording recording;
  private final Supply before;
  private final @Nullable Supply after;
  private final List<Segmentation.Run> runs;
  private final Residue residue;
  private final @Nullable Waveform mains;
  private final Instants instants;

  GapMeasurement(
      Recording recording,
      Supply before,
      @Nullable Supply after,
      GapTopology topology,
      @Nullable Waveform mains) {
    this.recording = recording;
    this.before = before;
    this.after = after;
    this.runs = new ArrayList<>(topology.runs());
    this.residue = topology.residue();
    this.mains = mains;
    this.instants = new Instants(recording, before, residue, after);
  }

  /** The outcome of the event; null where the departure turns out to be none. */
  @Nullable Outcome outcome() {
    int firstGap = indexOf(Segmentation.Part.GAP, 0);
    if (firstGap < 0) {
      return new UnbrokenSupply(recording, before.harmonics(), mains, -1)
          .changedTo(after, changeSeconds());
    }
    Edge loss = loss(firstGap);
    Edge lastOpening = lastOpening(firstGap, loss);
    int firstAfter = indexOf(Segmentation.Part.AFTER, 0);
    if (after == null || firstAfter < 0) {
      return noReturn(loss, lastOpening);
    }
    Instants.Search search = arrivalSearch(firstAfter);
    List<Integer> steps = steps(search, after);
    Makes makes = steps.isEmpty() ? makes(search, after) : makesFrom(last(steps), after);
    Segmentation.Run bounce = lastBounce(makes);
    Edge settled = bounce == null ? makes.first() : lastMake(bounce);
    boolean bounced =
        bounce != null
            || steps.size() > 1
            || (!steps.isEmpty() && steps.get(0) >= runs.get(firstAfter).to());
    Edge firstReturn = bounced ? firstMake(firstAfter, steps, search) : settled;
    return isInterruption(loss, settled)
        ? measured(loss, lastOpening, firstReturn, settled, after)
        : null;
  }

  /**
   * Whether the load was left: for long enough, and either to a residue away from the supply before
   * or to anything else but that supply. A spike, a notch or a ring on a healthy supply follows it
   * but for moments.
   */
  private boolean isInterruption(Edge loss, Edge settled) {
    if (settled.seconds() - loss.seconds() < SHORTEST_GAP_SECONDS) {
      return false;
    }
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(loss.seconds())));
    int to = (int) Math.ceil(recording.time().indexAt(settled.seconds()));
    double apart = APART_SHARE_OF_PEAK * recording.peakVolts();
    int left = 0;
    int following = 0;
    double farthest = 0;
    for (int i = from; i < Math.min(to, recording.length()); i++) {
      double seconds = recording.time().secondsAt(i);
      double residual = residue.voltsAt(seconds);
      double supplied = before.model().voltsAt(seconds);
      if (Math.abs(recording.volts()[i] - residual) < apart) {
        left++;
        farthest = Math.max(farthest, Math.abs(residual - supplied));
      }
      if (Math.abs(recording.volts()[i] - supplied) < apart) {
        following++;
      }
    }
    boolean isLeft = left > LEFT_SHARE * (to - from) && farthest > apart;
    return isLeft || following < FOLLOWING_SHARE * (to - from);
  }

  /** Where the supply after takes over without a gap; the middle of the record if it never does. */
  private double changeSeconds() {
    int firstAfter = indexOf(Segmentation.Part.AFTER, 0);
    int index = firstAfter < 0 ? recording.length() / 2 : runs.get(firstAfter).from();
    return recording.time().secondsAt(index - 0.5);
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
    if (residue.explainedTo() > gap.from() && residue.explainedTo() < to) {
      to = residue.explainedTo();
    }
    int first = Math.max(from + 1, gap.from() - slack);
    if (gapIndex >= 2) {
      first = Math.max(first, runs.get(gapIndex - 1).from());
    }
    int last = Math.max(first, Math.min(to - 1, gap.from() + slack));
    refuseClipped(first, last, "loss");
    return instants.leaving(new Instants.Search(from, to, first, last));
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

  /** Where the make at the start of run {@code index} is looked for. */
  private Instants.Search arrivalSearch(int index) {
    Segmentation.Run dead = runs.get(index - 1);
    Segmentation.Run fed = runs.get(index);
    int reach = recording.samplesIn(2 * REACH_SECONDS);
    int from = Math.max(dead.from(), fed.from() - reach);
    if (residue.explainedTo() < fed.from()) {
      from = Math.max(dead.from(), Math.min(from, residue.explainedTo() - reach));
    }
    int to = Math.min(recording.length(), fed.from() + reach);
    int slack = recording.samplesIn(SLACK_SECONDS);
    int last = Math.max(from + 1, Math.min(to - 1, fed.from() + slack));
    refuseClipped(fed.from() - slack, Math.min(to, fed.from() + slack), "return");
    return new Instants.Search(from, to, from + 1, last);
  }

  /** The last of the breaks that each begin within one cycle after the make before; else null. */
  private Segmentation.@Nullable Run lastBounce(Makes makes) {
    Segmentation.Run last = null;
    double madeAt = makes.first().seconds();
    for (Segmentation.Run run : makes.breaks()) {
      if (recording.time().secondsAt(run.from()) - madeAt > recording.task().cycleSeconds()) {
        break;
      }
      last = run;
      madeAt = recording.time().secondsAt(run.to());
    }
    return last;
  }

  private Makes makes(Instants.Search search, Supply following) {
    double noise = before.harmonics().noiseVolts();
    return Makes.find(recording, residue, following, noise, instants, search, runs);
  }

  private List<Integer> steps(Instants.Search search, Supply following) {
    int cycle = (int) Math.ceil(recording.samplesPerCycle());
    double noise = Math.max(before.harmonics().noiseVolts(), following.usualSpreadVolts());
    return new Steps(recording, residue, following, noise)
        .makes(search.first(), search.to() + cycle, cycle);
  }

  private static int last(List<Integer> steps) {
    return steps.get(steps.size() - 1);
  }

  /** The first make of a contact that bounced: looked for only up to where it breaks again. */
  private Edge firstMake(int firstAfter, List<Integer> steps, Instants.Search search) {
    Segmentation.Run fed = runs.get(firstAfter);
    if (!steps.isEmpty() && steps.get(0) <= fed.from()) {
      int step = steps.get(0);
      int to = steps.size() > 1 ? steps.get(1) : fed.to();
      return instants.arriving(new Instants.Search(Math.max(0, step - 2), to, step, step));
    }
    int to = Math.min(search.to(), fed.to());
    return instants.arriving(
        new Instants.Search(search.from(), to, search.first(), Math.min(search.last(), to - 1)));
  }

  /** The makes from a step on, whose place is known to a sample. */
  private Makes makesFrom(int step, Supply following) {
    int reach = recording.samplesIn(2 * REACH_SECONDS);
    int to = Math.min(recording.length(), step + reach);
    return makes(new Instants.Search(Math.max(0, step - 2), to, step, step), following);
  }

  /** The make that ends the break {@code bounce}; its first half may still decay. */
  private Edge lastMake(Segmentation.Run bounce) {
    int from = (bounce.from() + bounce.to()) / 2;
    int slack = Math.max(2, (bounce.to() - from) / 2);
    int to = Math.min(recording.length(), bounce.to() + recording.samplesIn(REACH_SECONDS));
    int last = Math.min(to - 1, bounce.to() + slack);
    return instants.arriving(new Instants.Search(from, to, from + 1, last));
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

  /** The last sample up to which nothing came back: a return too late to be judged ends it. */
  private int lastWithoutReturn() {
    int explained = residue.explainedTo();
    double rest = recording.rmsVolts(explained, recording.length());
    boolean comesBack = rest > COMES_BACK_SHARE_OF_NOMINAL * recording.task().nominalVolts();
    return comesBack ? explained - 1 : recording.length() - 1;
  }

  private Outcome noReturn(Edge loss, Edge lastOpening) {
    double end = recording.time().secondsAt(lastWithoutReturn());
    GapFigures figures = new GapFigures(recording, loss.seconds(), end);
    return new NoReturn(
        recording.task().event(),
        loss.seconds(),
        lastOpening.seconds(),
        (end - loss.seconds()) * 1e3,
        COVERAGE_FACTOR
            * 1e3
            * Math.hypot(loss.standardSeconds(), timeBaseSeconds(end - loss.seconds())),
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
        SupplySteps.between(before, following, settled.seconds(), recording.task()),
        cleanness(loss, firstReturn, settled, following));
  }

  private Cleanness cleanness(Edge loss, Edge firstReturn, Edge settled, Supply following) {
    var instants =
        new CleannessFigures.Instants(loss.seconds(), firstReturn.seconds(), settled.seconds());
    return new CleannessFigures(recording, before, following, instants).figures(runs);
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
            component("loss: noise, slope and shape", loss.locationSeconds()),
            component("loss: error of the models", loss.modelSeconds()),
            component("return: sample interval", settled.samplingSeconds()),
            component("return: noise, slope and shape", settled.locationSeconds()),
            component("return: error of the models", settled.modelSeconds()),
            new UncertaintyBudget.Component(
                "time base " + ppm + " ppm", 1e3 * timeBaseSeconds(transferMillis * 1e-3), true)),
        COVERAGE_FACTOR);
  }

  /** Rectangular, after the accuracy that the maker of the instrument states. */
  private double timeBaseSeconds(double seconds) {
    return seconds * recording.time().timeBasePpm() * 1e-6 / Math.sqrt(3);
  }

  private static UncertaintyBudget.Component component(String name, double standardSeconds) {
    return new UncertaintyBudget.Component(name, standardSeconds * 1e3, false);
  }
}

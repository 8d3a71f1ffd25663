package mainsgap.transfer;

import java.util.Locale;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.Waveform;
import mainsgap.transfer.event.Disturbance;
import mainsgap.transfer.event.FollowedAgain;
import mainsgap.transfer.event.MainsWatch;
import mainsgap.transfer.event.PassedOver;
import mainsgap.transfer.event.UnbrokenSupply;
import mainsgap.transfer.gap.GapMeasurement;
import mainsgap.transfer.instant.GapTopology;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.supply.Departure;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.SettledSupply;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Goes through the departures from the supply before up to the event. Those that turn out to be
 * none, such as spikes and sags, are passed over; where the supply before goes on after one, the
 * rest is measured as if it had not been.
 */
final class EventSearch {
  private static final double FEWEST_CYCLES_BEFORE = 2;

  /** The supply before is fitted over so many cycles at most. */
  private static final double CYCLES_BEFORE = 10;

  private static final double FEWEST_CYCLES_FITTED = 1.5;

  /** A record in which more departures are no events is not looked at further. */
  private static final int MOST_DEPARTURES = 40;

  /** The cycle after a disturbance differs from it once more. */
  private static final double PASSED_OVER_CYCLES = 1.2;

  /** What lies this close before the departure is left out of the fit of the supply before. */
  private static final double GUARD_SECONDS = 1.5e-3;

  /** The same before a loss that has been located. */
  private static final double REFIT_GUARD_SECONDS = 0.3e-3;

  /** Noise that is more is none: it is the shape of the cycle, or a disturbance. */
  private static final double MOST_NOISE_SHARE_OF_PEAK = 0.05;

  /** What is lower is not the supply of this task. */
  private static final double LEAST_SHARE_OF_PEAK = 0.5;

  /** An event of mains is seen at the output no earlier than this before it. */
  private static final double SAME_EVENT_CYCLES = 1;

  /** What is left on the load tells nothing of it so long before it. */
  private static final double LATER_SECONDS = 1e-3;

  private final Recording output;
  private final HarmonicModel start;
  private final @Nullable Waveform mains;
  private final MainsWatch watch;
  private final double period;
  private Disturbance.@Nullable Stretch passedOver;
  private Disturbance.@Nullable Stretch disturbed;
  private @Nullable MainsLoss mainsLoss;
  private boolean isMainsLossKnown;

  /**
   * One search.
   *
   * @param start the first cycles of the output
   */
  EventSearch(Recording output, HarmonicModel start, @Nullable Waveform mains) {
    this.output = output;
    this.start = start;
    this.mains = mains;
    this.watch = new MainsWatch(mains, output.time(), output.task());
    this.period = output.time().sampleRateHertz() / start.frequencyHertz();
  }

  /**
   * The event, or the proof that the output was not interrupted by it.
   *
   * @throws CannotMeasureException where there is neither
   */
  FoundEvent found() {
    Recording watched = output;
    int from = 0;
    int fitFrom = 0;
    Measured earlier = null;
    int departures = 0;
    int departure = departure(watched, from);
    while (departure >= 0) {
      if (++departures > MOST_DEPARTURES) {
        throw disturbedTooOften(departure);
      }
      checkCyclesBefore(departure / period);
      Supply before = supplyBefore(watched, fitFrom, departure);
      if (passedOver != null && !isSupply(before)) {
        throw lostBefore(passedOver.from());
      }
      PassedOver passed = PassedOver.disturbance(watched, before, departure);
      int longest = (int) (PASSED_OVER_CYCLES * period);
      if (passed == null) {
        Recording cleared = PassedOver.cleared(watched, before, departure);
        before = cleared.equals(watched) ? before : supplyBefore(cleared, fitFrom, departure);
        watched = cleared;
        FoundEvent event = event(watched, before, departure);
        if (event != null && !isBeforeMainsLoss(event.outcome())) {
          return event;
        }
        if (event != null) {
          earlier = (Measured) event.outcome();
          longest += (int) output.time().indexAt(earlier.returnSeconds()) - departure;
        }
        passed = PassedOver.noEvent(watched, before, departure, longest);
      }
      int seen = departure;
      from = passed == null ? departure + longest : passed.from();
      fitFrom = passed == null ? from : fitFrom;
      watched = passed == null ? watched : passed.recording();
      passedOver = new Disturbance.Stretch(seen, from);
      disturbed = passed == null ? disturbed : passedOver;
      departure = departure(watched, from);
    }
    if (earlier != null) {
      throw interruptedEarlier(earlier);
    }
    return new FoundEvent(
        new UnbrokenSupply(output, start, watch, passedOver).outcome(), null, null, mainsLoss());
  }

  private int departure(Recording watched, int from) {
    double noise = Math.min(start.noiseVolts(), MOST_NOISE_SHARE_OF_PEAK * watched.peakVolts());
    return Departure.find(
        watched, from, watched.length(), period, Departure.thresholdVolts(watched, noise));
  }

  /** What is found about a departure; null where it turns out to be no event. */
  private @Nullable FoundEvent event(Recording watched, Supply before, int departure) {
    FoundEvent event = fitted(watched, before, departure);
    Supply upToLoss = event == null ? null : upToLoss(watched, before, event.outcome());
    FoundEvent again = upToLoss == null ? null : fitted(watched, upToLoss, departure);
    return again == null ? event : again;
  }

  private @Nullable FoundEvent fitted(Recording watched, Supply before, int departure) {
    Supply after = SettledSupply.after(watched, departure, watched.task().nominalFrequencyHertz());
    GapTopology seen = new GapTopology(watched, before, after, departure);
    int left = seen.followedAgain().left();
    boolean isLater = left - departure > watched.samplesIn(LATER_SECONDS);
    GapTopology topology = isLater ? seen.leftAt(left) : seen;
    Disturbance.Stretch disturbance = disturbance(topology);
    if (disturbance != null) {
      PassedOver passed = PassedOver.bridged(watched, before, disturbance);
      int next = departure(passed.recording(), passed.from());
      return next < 0 ? null : fitted(passed.recording(), before, next);
    }
    Outcome outcome =
        new GapMeasurement(watched, before, after, topology, watch, disturbed).outcome();
    return outcome == null ? null : new FoundEvent(outcome, before, after, mainsLoss());
  }

  /** What is left on the load behind the loss tells whether it was dead before. */
  private static Disturbance.@Nullable Stretch disturbance(GapTopology topology) {
    FollowedAgain again = topology.followedAgain();
    int left = again.leftForGood();
    return left > again.left() ? topology.leftAt(left).followedAgain().disturbance() : null;
  }

  /**
   * The supply before, fitted anew up to a loss that lies in its fit, as behind an arc: the fit
   * takes what comes after the loss for noise and for a part of the supply. Null where it lies
   * later, or where too little is left to fit.
   */
  private static @Nullable Supply upToLoss(Recording watched, Supply before, Outcome outcome) {
    if (!(outcome instanceof Measured measured)) {
      return null;
    }
    int loss = (int) watched.time().indexAt(measured.lossSeconds());
    int to = loss - watched.samplesIn(REFIT_GUARD_SECONDS);
    return to >= before.to() || to - before.from() < watched.samplesPerCycle()
        ? null
        : Supply.fit(watched, before.from(), to, before.model().frequencyHertz());
  }

  /** An interruption that was over well before mains was lost is no answer to that loss. */
  private boolean isBeforeMainsLoss(Outcome outcome) {
    MainsLoss loss = mainsLoss();
    double slack = SAME_EVENT_CYCLES * output.task().cycleSeconds();
    return loss != null
        && outcome instanceof Measured measured
        && measured.returnSeconds() < loss.lossSeconds() - slack;
  }

  /** A dead load behind a departure that could not be measured is no supply to be lost. */
  private boolean isSupply(Supply before) {
    return before.harmonics().amplitudeVolts() > LEAST_SHARE_OF_PEAK * output.peakVolts();
  }

  private CannotMeasureException lostBefore(int departure) {
    return new CannotMeasureException(
        String.format(
            Locale.ROOT,
            "the output leaves its supply at %.1f ms of the time axis, and what follows is neither"
                + " that supply nor a gap that can be measured: look at the trace, and record with"
                + " less noise",
            1e3 * output.time().secondsAt(departure)));
  }

  private CannotMeasureException disturbedTooOften(int departure) {
    return new CannotMeasureException(
        String.format(
            Locale.ROOT,
            "the output is disturbed more than %d times up to %.1f ms of the time axis, so that no"
                + " event is looked for after it: start the record later, or take away what"
                + " disturbs it",
            MOST_DEPARTURES,
            1e3 * output.time().secondsAt(departure)));
  }

  private CannotMeasureException interruptedEarlier(Measured earlier) {
    MainsLoss loss = mainsLoss();
    return new CannotMeasureException(
        String.format(
            Locale.ROOT,
            "the output is interrupted for %.1f ms at %.1f ms of the time axis, before mains is"
                + " lost at %.1f ms, and not then: look at the trace, and at where the mains"
                + " channel is connected",
            earlier.transferMillis(),
            1e3 * earlier.lossSeconds(),
            loss == null ? Double.NaN : 1e3 * loss.lossSeconds()));
  }

  /** Looked for once an event is found: most captures have no mains channel, or no event. */
  private @Nullable MainsLoss mainsLoss() {
    if (!isMainsLossKnown) {
      mainsLoss = mains == null ? null : MainsLoss.find(mains, output.time(), output.task());
      isMainsLossKnown = true;
    }
    return mainsLoss;
  }

  /** An event in the first cycle is seen in the second, which differs from it. */
  private static void checkCyclesBefore(double cyclesBefore) {
    if (cyclesBefore < FEWEST_CYCLES_BEFORE) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "something happens within the first %.0f cycles of the record, and so many are needed"
                  + " before the event: record more before the trigger",
              FEWEST_CYCLES_BEFORE));
    }
  }

  /** Fits up to shortly before the departure, not back across one that was not bridged. */
  private Supply supplyBefore(Recording watched, int passedOver, int departure) {
    int to = departure - watched.samplesIn(GUARD_SECONDS);
    double earliest = Math.min(passedOver, to - FEWEST_CYCLES_FITTED * period);
    int from = (int) Math.max(Math.max(0, earliest), to - CYCLES_BEFORE * period);
    if (watched.isClippedIn(from, to)) {
      throw new CannotMeasureException(
          "the supply before is clipped: choose a larger range, at least 1.5 times the nominal"
              + " peak of "
              + Math.round(watched.peakVolts())
              + " V");
    }
    return Supply.fitUpTo(watched, from, to, start.frequencyHertz(), departure);
  }
}

package mainsgap.transfer;

import java.util.Locale;
import java.util.function.Supplier;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.Waveform;
import mainsgap.transfer.event.Disturbance;
import mainsgap.transfer.event.MainsWatch;
import mainsgap.transfer.event.PassedOver;
import mainsgap.transfer.outcome.CannotMeasureException;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Goes through the departures from the supply before up to the event. Those that turn out to be
 * none, such as spikes and sags, are passed over; where the supply before goes on after one, the
 * rest is measured as if it had not been.
 */
final class EventSearch {
  private static final double FEWEST_CYCLES_BEFORE = 2;

  /** A record in which more departures are no events is not looked at further. */
  private static final int MOST_DEPARTURES = 40;

  /** The cycle after a disturbance differs from it once more. */
  private static final double PASSED_OVER_CYCLES = 1.2;

  /** What is lower is not the supply of this task. */
  private static final double LEAST_SHARE_OF_PEAK = 0.5;

  /** An event of mains is seen at the output no earlier than this before it. */
  private static final double SAME_EVENT_CYCLES = 1;

  private final Recording output;
  private final HarmonicModel start;
  private final @Nullable Waveform mains;
  private final MainsWatch watch;
  private final double period;
  private final EventFit fits;
  private Disturbance.@Nullable Stretch lookedAt;
  private Disturbance.@Nullable Stretch bridged;
  private @Nullable MainsLoss mainsLoss;
  private boolean isMainsLossKnown;

  /**
   * One search.
   *
   * @param start the first cycles of the output
   * @param noiseVolts the standard deviation of one of their samples' noise
   */
  EventSearch(Recording output, HarmonicModel start, double noiseVolts, @Nullable Waveform mains) {
    this.output = output;
    this.start = start;
    this.mains = mains;
    this.watch = new MainsWatch(mains, output.time(), output.task());
    this.period = output.time().sampleRateHertz() / start.frequencyHertz();
    this.fits = new EventFit(start, noiseVolts, watch, period);
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
    int departure = fits.departure(watched, from);
    while (departure >= 0) {
      if (++departures > MOST_DEPARTURES) {
        throw disturbedTooOften(departure);
      }
      checkCyclesBefore(departure / period);
      Supply before = fits.supplyBefore(watched, fitFrom, departure);
      if (lookedAt != null && !isSupply(before)) {
        throw lostBefore(lookedAt.from());
      }
      if (PassedOver.isNoDeparture(watched, before, departure)) {
        break;
      }
      PassedOver passed = PassedOver.disturbance(watched, before, departure);
      int longest = (int) (PASSED_OVER_CYCLES * period);
      if (passed == null) {
        Recording cleared = PassedOver.cleared(watched, before, departure);
        before = cleared.equals(watched) ? before : fits.supplyBefore(cleared, fitFrom, departure);
        watched = cleared;
        FoundEvent event = fits.event(watched, before, departure, bridged);
        if (event != null && !isBeforeMainsLoss(event.outcome())) {
          return event.with(mainsLoss());
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
      lookedAt = new Disturbance.Stretch(seen, from);
      bridged = passed == null ? bridged : lookedAt;
      departure = fits.departure(watched, from);
    }
    if (earlier != null) {
      throw interruptedEarlier(earlier);
    }
    return new FoundEvent(
        fits.unbroken(output, start, lookedAt).outcome(), null, null, mainsLoss());
  }

  /**
   * What is found about a departure from a supply that is known; null where it is no event, or none
   * that can be measured.
   */
  @Nullable FoundEvent at(Recording watched, Supply before, int departure) {
    return tried(before, () -> fits.event(watched, before, departure, null));
  }

  /**
   * The same where one supply feeds the load at first, and it settles on another.
   *
   * @param cleared the same recording as if the first had gone on feeding
   */
  @Nullable FoundEvent at(
      Recording watched, Recording cleared, Supply before, Supply first, Supply settled, int left) {
    return tried(before, () -> fits.returned(watched, cleared, before, first, settled, left));
  }

  private @Nullable FoundEvent tried(Supply before, Supplier<@Nullable FoundEvent> look) {
    FoundEvent found = isSupply(before) ? Tried.orNull(look) : null;
    return ofMainsLoss(found);
  }

  private @Nullable FoundEvent ofMainsLoss(@Nullable FoundEvent event) {
    return event == null || isBeforeMainsLoss(event.outcome()) ? null : event.with(mainsLoss());
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
}

package mainsgap.transfer;

import java.util.Locale;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.FitException;
import mainsgap.signal.HarmonicFit;
import mainsgap.signal.HarmonicModel;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/**
 * The measurement of one capture, in the order of a test report's method section: the supply
 * before, the place at which it is left, the supply after, what feeds the load sample by sample,
 * the two instants, the figures between them. Pure: the capture is left unchanged.
 */
public final class TransferMeasurement {
  /** Fewer samples a cycle can't place an instant to a useful part of a millisecond. */
  private static final double FEWEST_SAMPLES_PER_CYCLE = 40;

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

  /** No supply, and no surge on it, reaches so many nominal peaks. */
  private static final double MOST_PEAKS = 100;

  private static final double AMPLITUDE_TOLERANCE = 0.2;
  private static final double FREQUENCY_TOLERANCE = 0.05;

  private TransferMeasurement() {}

  /**
   * Measures a capture.
   *
   * @return {@link Refused} with its reason where the capture carries no measurement; never null
   */
  public static Outcome measure(Capture capture, MeasuringTask task) {
    try {
      Outcome outcome = found(capture, task).outcome();
      return outcome instanceof Measured measured
          ? new OtherChannelFigures(capture, task, measured).figures()
          : outcome;
    } catch (CannotMeasureException e) {
      return new Refused(String.valueOf(e.getMessage()));
    } catch (FitException e) {
      return new Refused(
          "no supply can be fitted: " + e.getMessage() + ": is this a recording of mains?");
    }
  }

  /**
   * What the output tells, with the supplies that were fitted for it.
   *
   * @throws CannotMeasureException where the capture carries no measurement
   * @throws FitException where no supply can be fitted
   */
  static FoundEvent found(Capture capture, MeasuringTask task) {
    Recording output = Recording.of(capture.output(), capture.time(), task);
    checkVoltages(output);
    return found(output, capture.waveform(ChannelRole.MAINS).orElse(null));
  }

  /** Departures that turn out to be no event, such as spikes and sags, are passed over. */
  private static FoundEvent found(Recording output, @Nullable Waveform mains) {
    checkSampling(output);
    HarmonicModel start = firstCycles(output);
    double period = output.time().sampleRateHertz() / start.frequencyHertz();
    int from = 0;
    int passedOver = -1;
    for (int events = 0; events < MOST_DEPARTURES; events++) {
      int departure = departure(output, start, from);
      if (departure < 0) {
        break;
      }
      checkCyclesBefore(departure / period);
      Supply before = supplyBefore(output, from, departure, start.frequencyHertz());
      FoundEvent event = event(output, before, departure, mains);
      Supply upToLoss = event == null ? null : upToLoss(output, before, event.outcome());
      if (upToLoss != null) {
        FoundEvent again = event(output, upToLoss, departure, mains);
        event = again == null ? event : again;
      }
      if (event != null) {
        return event;
      }
      passedOver = departure;
      from = (int) Math.ceil(departure + PASSED_OVER_CYCLES * period);
    }
    Outcome unbroken = new UnbrokenSupply(output, start, mains, passedOver).outcome();
    return new FoundEvent(unbroken, null, null);
  }

  /** What is found about a departure; null where it turns out to be no event. */
  private static @Nullable FoundEvent event(
      Recording output, Supply before, int departure, @Nullable Waveform mains) {
    Supply after = SettledSupply.after(output, departure, output.task().nominalFrequencyHertz());
    GapTopology topology = new GapTopology(output, before, after, departure);
    Outcome outcome = new GapMeasurement(output, before, after, topology, mains).outcome();
    return outcome == null ? null : new FoundEvent(outcome, before, after);
  }

  /**
   * The supply before, fitted anew up to a loss that lies in its fit, as behind an arc: the fit
   * takes what comes after the loss for noise and for a part of the supply. Null where it lies
   * later, or where too little is left to fit.
   */
  private static @Nullable Supply upToLoss(Recording output, Supply before, Outcome outcome) {
    if (!(outcome instanceof Measured measured)) {
      return null;
    }
    int loss = (int) output.time().indexAt(measured.lossSeconds());
    int to = loss - output.samplesIn(REFIT_GUARD_SECONDS);
    return to >= before.to() || to - before.from() < output.samplesPerCycle()
        ? null
        : Supply.fit(output, before.from(), to, before.model().frequencyHertz());
  }

  private static void checkVoltages(Recording output) {
    double largest = MOST_PEAKS * output.peakVolts();
    for (int i = 0; i < output.length(); i++) {
      double volts = output.volts()[i];
      if (!(Math.abs(volts) <= largest)) {
        throw new CannotMeasureException(
            String.format(
                Locale.ROOT,
                "sample %d is %g V, nominal peak %.0f V: is the probe factor right, and is this a"
                    + " recording of mains?",
                i + 1,
                volts,
                output.peakVolts()));
      }
    }
  }

  private static void checkSampling(Recording output) {
    double perCycle = output.samplesPerCycle();
    if (perCycle < FEWEST_SAMPLES_PER_CYCLE) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "too coarse: %.0f samples a cycle, at least %.0f are needed: sample faster than"
                  + " %.1f kS/s",
              perCycle,
              FEWEST_SAMPLES_PER_CYCLE,
              FEWEST_SAMPLES_PER_CYCLE * output.task().nominalFrequencyHertz() / 1000));
    }
    double cycles = output.length() / perCycle;
    if (cycles < FEWEST_CYCLES_BEFORE + 0.5) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the record holds %.1f cycles, at least %.1f are needed: record longer",
              cycles,
              FEWEST_CYCLES_BEFORE + 0.5));
    }
  }

  private static HarmonicModel firstCycles(Recording output) {
    int to = (int) Math.min(output.length(), Math.ceil(2 * output.samplesPerCycle()));
    checkNominalVolts(output, output.rmsVolts(0, to));
    HarmonicModel start =
        HarmonicFit.fit(
            output.volts(), output.time(), 0, to, output.task().nominalFrequencyHertz(), 1, true);
    checkNominalHertz(output, start.frequencyHertz());
    return start;
  }

  private static void checkNominalVolts(Recording output, double rmsVolts) {
    double nominal = output.task().nominalVolts();
    if (Math.abs(rmsVolts - nominal) > AMPLITUDE_TOLERANCE * nominal) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the supply before is %.4g V RMS, nominal %.4g V ± %.0f %%: is the probe factor"
                  + " right?",
              rmsVolts,
              nominal,
              100 * AMPLITUDE_TOLERANCE));
    }
  }

  private static void checkNominalHertz(Recording output, double hertz) {
    double nominalHertz = output.task().nominalFrequencyHertz();
    if (!(Math.abs(hertz - nominalHertz) <= FREQUENCY_TOLERANCE * nominalHertz)) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "the supply before has %.2f Hz, nominal %.4g Hz ± %.0f %%: is the nominal frequency"
                  + " right, and are there two cycles before the event?",
              hertz,
              nominalHertz,
              100 * FREQUENCY_TOLERANCE));
    }
  }

  private static int departure(Recording output, HarmonicModel start, int from) {
    double period = output.time().sampleRateHertz() / start.frequencyHertz();
    double noise = Math.min(start.noiseVolts(), 0.05 * output.peakVolts());
    return Departure.find(
        output, from, output.length(), period, Departure.thresholdVolts(output, noise));
  }

  private static void checkCyclesBefore(double cyclesBefore) {
    if (cyclesBefore < FEWEST_CYCLES_BEFORE) {
      throw new CannotMeasureException(
          String.format(
              Locale.ROOT,
              "%.1f cycles before the event, at least %.0f are needed: record more before the"
                  + " trigger",
              cyclesBefore,
              FEWEST_CYCLES_BEFORE));
    }
  }

  /** Fits up to shortly before the departure, not back across one that was passed over. */
  private static Supply supplyBefore(
      Recording output, int passedOver, int departure, double hertz) {
    double perCycle = output.time().sampleRateHertz() / hertz;
    int to = departure - output.samplesIn(GUARD_SECONDS);
    double earliest = Math.min(passedOver, to - FEWEST_CYCLES_FITTED * perCycle);
    int from = (int) Math.max(Math.max(0, earliest), to - CYCLES_BEFORE * perCycle);
    if (output.isClippedIn(from, to)) {
      throw new CannotMeasureException(
          "the supply before is clipped: choose a larger range, at least 1.5 times the nominal"
              + " peak of "
              + Math.round(output.peakVolts())
              + " V");
    }
    return Supply.fit(output, from, to, hertz);
  }
}

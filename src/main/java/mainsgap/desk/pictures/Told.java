package mainsgap.desk.pictures;

import java.util.ArrayList;
import java.util.List;
import mainsgap.desk.trace.Gap;
import mainsgap.signal.Event;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.jspecify.annotations.Nullable;

/**
 * What an outcome tells of its capture, as far as a picture shows it.
 *
 * @param zeroSeconds the zero of the picture on the capture's own axis
 * @param zeroWords what happened there
 * @param event the change of supply; null where the capture is refused
 * @param gap null where there is none to show
 * @param guardMillis half-width of the interval of the time
 * @param remark what the picture cannot show, as sentences
 */
record Told(
    double zeroSeconds,
    String zeroWords,
    @Nullable Event event,
    @Nullable Gap gap,
    double guardMillis,
    String remark) {
  static final String START_OF_RECORD = "start of record";

  static Told of(Outcome outcome, TimeAxis time) {
    return switch (outcome.kind()) {
      case MEASURED -> measured((Measured) outcome);
      case NO_RETURN -> noReturn((NoReturn) outcome, time);
      case NO_INTERRUPTION -> noInterruption((NoInterruption) outcome);
      case REFUSED ->
          new Told(
              time.firstSampleSeconds(),
              START_OF_RECORD,
              null,
              null,
              0,
              "Refused: " + MillisWords.ended(((Refused) outcome).reason()));
    };
  }

  private static Told measured(Measured measured) {
    double seconds = Math.max(0, measured.returnSeconds() - measured.lossSeconds());
    String label = MillisWords.stated(measured.transferMillis(), measured.uncertaintyMillis());
    List<String> remarks = new ArrayList<>();
    further(measured.furtherInterruptions(), remarks);
    secondLeg(measured, remarks);
    return new Told(
        measured.lossSeconds(),
        zeroWords(measured.event()),
        measured.event(),
        Gap.of(seconds, label),
        measured.uncertaintyMillis(),
        String.join(" ", remarks));
  }

  /** The gap goes on at the last sample, or the voltage comes back shortly before it. */
  private static Told noReturn(NoReturn none, TimeAxis time) {
    double end =
        none.comesBackTooLate()
            ? 1e-3 * none.atLeastMillis()
            : time.firstSampleSeconds() + time.durationSeconds() - none.lossSeconds();
    List<String> remarks = new ArrayList<>();
    remarks.add(
        none.comesBackTooLate()
            ? "The voltage comes back too late in the record to be judged: record longer."
            : "No return in the record: the gap goes on at its end.");
    secondLeg(none, remarks);
    String label = "at least " + MillisWords.stated(none.atLeastMillis(), none.uncertaintyMillis());
    return new Told(
        none.lossSeconds(),
        zeroWords(none.event()),
        none.event(),
        new Gap(0, Math.max(0, end), true, label),
        none.uncertaintyMillis(),
        String.join(" ", remarks));
  }

  private static Told noInterruption(NoInterruption none) {
    List<String> remarks = new ArrayList<>();
    remarks.add(
        "No interruption: a gap from "
            + MillisWords.millis(none.shortestVisibleMillis())
            + " up would have been seen. "
            + MillisWords.sentence(none.proof()));
    secondLeg(none, remarks);
    return new Told(
        none.eventSeconds(),
        zeroWords(none.event()),
        none.event(),
        null,
        0,
        String.join(" ", remarks));
  }

  private static void further(FurtherInterruptions further, List<String> remarks) {
    if (further.count() > 0) {
      Double longest = further.longestMillis();
      String length =
          longest == null
              ? "of unknown length"
              : "up to " + MillisWords.stated(longest, further.uncertaintyMillis()) + " long";
      remarks.add(
          MillisWords.counted(further.count(), "further interruption")
              + " after this gap, "
              + length
              + ".");
    }
  }

  private static void secondLeg(Outcome outcome, List<String> remarks) {
    OtherChannels.SecondLeg leg = outcome.others().secondLeg();
    if (leg == null) {
      return;
    }
    Double atLeast = leg.atLeastMillis();
    Double transfer = leg.transferMillis();
    String found;
    if (leg.refused() != null) {
      found = "not measured: " + leg.refused();
    } else if (leg.isUninterrupted()) {
      found = "no interruption";
    } else if (transfer != null) {
      found = "gap of " + MillisWords.stated(transfer, leg.uncertaintyMillis());
    } else if (atLeast != null) {
      found = "no return in " + MillisWords.stated(atLeast, leg.uncertaintyMillis());
    } else {
      found = "no interruption";
    }
    remarks.add(MillisWords.sentence("second leg: " + found));
  }

  private static String zeroWords(Event event) {
    return switch (event) {
      case LOSS -> "loss";
      case RESTORATION -> "changeover";
    };
  }
}

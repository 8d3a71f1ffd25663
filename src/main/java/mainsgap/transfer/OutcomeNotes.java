package mainsgap.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What has to be told beside the time of an outcome, whatever its verdict: short sentences. */
public final class OutcomeNotes {
  /** Mains and output that go within this are told to go together: nothing was held through. */
  private static final double TOGETHER_MILLIS = 0.1;

  /** Of a voltage that is seen to come back, but not for long enough to locate its return. */
  static final String TOO_LATE =
      "the voltage comes back too late in the record to be judged (record longer after the"
          + " trigger)";

  private final List<String> notes = new ArrayList<>();

  private OutcomeNotes() {}

  /** The sentences, in the order of the event; empty where the time tells all. */
  public static List<String> of(Outcome outcome) {
    OutcomeNotes found = new OutcomeNotes();
    if (outcome instanceof Measured measured) {
      found.timesOf(measured);
      found.othersOf(measured);
    } else if (outcome instanceof NoReturn noReturn && noReturn.comesBackTooLate()) {
      found.notes.add(TOO_LATE);
    } else if (outcome instanceof NoInterruption none) {
      found.notes.add("proof that mains was lost: " + none.proof());
    }
    return List.copyOf(found.notes);
  }

  private void timesOf(Measured measured) {
    String usable = Wording.usable(measured.transferMillis(), measured.usableMillis());
    if (!usable.isEmpty()) {
      notes.add(usable.substring("; ".length()));
    }
    FurtherInterruptions further = measured.furtherInterruptions();
    Double longest = further.longestMillis();
    if (further.count() > 0) {
      notes.add(
          further.count()
              + (further.count() == 1 ? " further interruption" : " further interruptions")
              + " after the return, "
              + (longest == null
                  ? "of unknown length"
                  : (further.count() == 1 ? "of " : "the longest of ")
                      + (further.isOpen()
                          ? "at least " + Wording.roundedTime(longest, 0.1)
                          : Wording.time(longest, further.uncertaintyMillis()))));
    }
    double bounce = 1e3 * (measured.lastOpeningSeconds() - measured.lossSeconds());
    if (bounce > TOGETHER_MILLIS) {
      notes.add("the mains switch bounced: it opened for good " + Wording.time(bounce) + " later");
    }
  }

  private void othersOf(Measured measured) {
    OtherChannels others = measured.others();
    Double held = others.holdThroughMillis();
    if (held != null && Math.abs(held) > TOGETHER_MILLIS) {
      notes.add(
          held > 0
              ? "the unit held the load for " + Wording.time(held) + " after mains was lost"
              : "the output left " + Wording.time(-held) + " before mains was lost");
    }
    OtherChannels.SecondLeg leg = others.secondLeg();
    if (leg != null) {
      notes.add("second leg: " + words(leg));
    }
    Double current = others.loadCurrentAfterPercent();
    if (current != null) {
      notes.add(
          String.format(
              Locale.ROOT,
              "load current at the end %.0f %% of that before: the load %s",
              current,
              Boolean.TRUE.equals(others.loadRodeThrough())
                  ? "rode through"
                  : "tripped, or starts again later"));
    }
    Double marker = others.markerSeconds();
    if (marker != null) {
      double since = 1e3 * (marker - measured.lossSeconds());
      notes.add(
          "marker changed "
              + Wording.time(Math.abs(since))
              + (since < 0 ? " before the loss" : " after the loss"));
    }
  }

  private static String words(OtherChannels.SecondLeg leg) {
    if (leg.refused() != null) {
      return "not measured: " + leg.refused();
    }
    Double transfer = leg.transferMillis();
    Double least = leg.atLeastMillis();
    if (transfer == null) {
      return "no return within "
          + Wording.roundedTime(least == null ? 0 : least, leg.uncertaintyMillis());
    }
    return transfer == 0
        ? "no interruption longer than " + Wording.time(leg.uncertaintyMillis())
        : Wording.time(transfer, leg.uncertaintyMillis());
  }
}

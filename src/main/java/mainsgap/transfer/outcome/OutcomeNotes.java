package mainsgap.transfer.outcome;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.signal.Event;

/** What has to be told beside the time of an outcome, whatever its verdict: short sentences. */
public final class OutcomeNotes {
  /** Mains and output that go within this are told to go together: nothing was held through. */
  private static final double TOGETHER_MILLIS = 0.1;

  /** The band of a usable voltage. */
  private static final double OTHER_HEIGHT_PERCENT = 10;

  private static final String IN_REST =
      " lies in a rest of the output's own waveform, which shows no instant: it is taken in the"
          + " middle, with the rest as its uncertainty";

  /** Of a voltage that is seen to come back, but not for long enough to locate its return. */
  public static final String TOO_LATE =
      "the voltage comes back too late in the record to be judged (record longer after the"
          + " trigger)";

  private final List<String> notes = new ArrayList<>();

  private OutcomeNotes() {}

  /** The sentences, in the order of the event; empty where the time tells all. */
  public static List<String> of(Outcome outcome) {
    OutcomeNotes found = new OutcomeNotes();
    switch (outcome.kind()) {
      case MEASURED -> found.measured((Measured) outcome);
      case NO_RETURN -> found.noReturn((NoReturn) outcome);
      case NO_INTERRUPTION -> found.noInterruption((NoInterruption) outcome);
      case REFUSED -> {
        return List.of();
      }
    }
    return List.copyOf(found.notes);
  }

  private void measured(Measured measured) {
    timesOf(measured);
    bounce(measured.event(), measured.lossSeconds(), measured.lastOpeningSeconds());
    othersOf(measured.others(), measured.lossSeconds());
  }

  private void noReturn(NoReturn noReturn) {
    if (noReturn.comesBackTooLate()) {
      notes.add(TOO_LATE);
    }
    bounce(noReturn.event(), noReturn.lossSeconds(), noReturn.lastOpeningSeconds());
    othersOf(noReturn.others(), noReturn.lossSeconds());
  }

  private void noInterruption(NoInterruption none) {
    notes.add(
        (none.event() == Event.LOSS
                ? "proof that mains was lost: "
                : "proof that mains came back: ")
            + none.proof());
    Double step = none.supplies().amplitudeStepPercent();
    if (step != null && Math.abs(step) > OTHER_HEIGHT_PERCENT) {
      notes.add(
          String.format(
              Locale.ROOT,
              "the output goes on %.0f %% of nominal %s than before",
              Math.abs(step),
              step < 0 ? "lower" : "higher"));
    }
    othersOf(none.others(), none.eventSeconds());
  }

  private void timesOf(Measured measured) {
    for (String instant : List.of("loss", "return")) {
      if (measured.budget().isInRest(instant)) {
        notes.add("the " + instant + IN_REST);
      }
    }
    String usable = Wording.usable(measured.transferMillis(), measured.usableMillis());
    if (!usable.isEmpty()) {
      notes.add(usable.substring("; ".length()));
    }
    String further = further(measured.furtherInterruptions());
    if (!further.isEmpty()) {
      notes.add(further);
    }
  }

  /** At a restoration it is a contact of the unit that opens. */
  private void bounce(Event event, double lossSeconds, double lastOpeningSeconds) {
    double bounce = 1e3 * (lastOpeningSeconds - lossSeconds);
    if (bounce > TOGETHER_MILLIS) {
      notes.add(
          (event == Event.LOSS
                  ? "the mains switch bounced: it opened for good "
                  : "the unit's contact bounced as it opened, for good ")
              + Wording.time(bounce)
              + " later");
    }
  }

  private void othersOf(OtherChannels others, double lossSeconds) {
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
      double since = 1e3 * (marker - lossSeconds);
      notes.add(
          "marker changed "
              + Wording.time(Math.abs(since))
              + (since < 0 ? " before the event" : " after the event"));
    }
  }

  /** The breaks after a return; empty where there are none. */
  private static String further(FurtherInterruptions further) {
    if (further.count() == 0) {
      return "";
    }
    Double longest = further.longestMillis();
    String length =
        longest == null
            ? "of unknown length"
            : (further.count() == 1 ? "of " : "the longest of ")
                + (further.isOpen() ? "at least " : "")
                + Wording.time(longest, further.uncertaintyMillis());
    return further.count()
        + (further.count() == 1 ? " further interruption" : " further interruptions")
        + " after the return, "
        + length;
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
    if (leg.isUninterrupted()) {
      return "no interruption longer than " + Wording.time(leg.uncertaintyMillis());
    }
    String further = further(leg.furtherInterruptions());
    return Wording.time(transfer, leg.uncertaintyMillis())
        + (further.isEmpty() ? "" : "; " + further);
  }
}

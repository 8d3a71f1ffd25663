package mainsgap.scope;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.scope.EventSignal.Follows;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Event;

/** What a planned trigger does and what it cannot see, in sentences for the one who arms it. */
final class TriggerWords {
  private final CaptureRequest request;
  private final CaptureTimes times;

  TriggerWords(CaptureRequest request, CaptureTimes times) {
    this.request = request;
    this.times = times;
  }

  List<String> ofQuiet(PlannedTrigger trigger, ChannelRole source, BlindZone zone) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        text(
            "%s on the %s: %s (%s %% of the peak) for %s; a healthy sine is quiet for %s at most.",
            capital(trigger.method().words()),
            source.words(),
            quietness(trigger),
            Words.plain(100 * zone.levelPart(), 3),
            Words.of(zone.timeSeconds(), "s"),
            Words.of(
                BlindZone.healthySeconds(zone.method(), zone.levelPart(), zone.frequencyHertz()),
                "s")));
    if (source == ChannelRole.MAINS) {
      sentences.add(
          "No blind zone: it watches the mains downstream of the switch, which stays dead after an"
              + " opening, so that even a unit without a gap is caught.");
    } else {
      sentences.add(blindZone(zone));
      sentences.add(atRated(zone));
      sentences.add(
          "Voltage that is left in the gap (the charge of a load with capacitors, pickup) makes the"
              + " gap look that much shorter to the trigger while it is beyond the level.");
    }
    if (request.event() == Event.RESTORATION) {
      sentences.add(armedForTheUnit());
      sentences.add(
          "The unit's inverter should make a sine: one in steps rests near zero for longer, and may"
              + " trip the trigger before it goes back.");
    }
    return sentences;
  }

  List<String> ofEdge(PlannedTrigger trigger, EventSignal signal) {
    List<String> sentences = new ArrayList<>();
    boolean onMains = trigger.source() == ChannelRole.MAINS;
    sentences.add(
        text(
            "%s on the %s: %s through %s on the %s way%s.",
            capital(trigger.method().words()),
            trigger.source() == null ? "external input" : trigger.source().words(),
            onMains ? "mains goes" : "the " + signal.follows().words() + " goes",
            Words.volts(trigger.levelVolts()),
            trigger.slope() == Slope.RISING ? "up" : "down",
            signal.delaySeconds() > 0
                ? ", at most "
                    + Words.of(signal.delaySeconds(), "s")
                    + " late; that shifts the trigger, not what is measured"
                : ""));
    boolean back = request.event() == Event.RESTORATION;
    if (signal.follows() == Follows.UNIT) {
      sentences.add(
          "No blind zone, if the contact moves at every transfer: try it by hand before the series.");
      if (back) {
        sentences.add(armedForTheUnit());
      }
    } else {
      sentences.add(
          back
              ? text(
                  "No blind zone in the record, which goes on while the unit checks the mains, for"
                      + " %s: one that checks for longer is not in it.",
                  Words.of(times.unitWaitSeconds(), "s"))
              : "No blind zone: the signal stays away while mains is off, so that even a unit without"
                  + " a gap is caught.");
    }
    return sentences;
  }

  /** Why an edge cannot be had. */
  String noSignal(CatchMethod method) {
    return "an "
        + method.words()
        + " needs a signal that changes once, with the "
        + request.event().word()
        + ", and the rig has none at "
        + (method == CatchMethod.EXTERNAL_TRIGGER ? "the external input" : "a marker channel")
        + ": connect an isolated mains-present signal or a contact of the unit and write it into the"
        + " rig file, or catch the "
        + request.event().word()
        + " by a forced record";
  }

  private String blindZone(BlindZone zone) {
    return text(
        "Blind zone: a gap of %s or more always trips it, and one under %s never does; between them"
            + " the point on wave decides, and %s %% are missed on average (the supply back in step,"
            + " no voltage in the gap). A unit without a gap never trips it.",
        Words.of(zone.sureFromSeconds(), "s"),
        Words.of(zone.neverUnderSeconds(), "s"),
        percent(zone.missedPartBetween()));
  }

  private String atRated(BlindZone zone) {
    double rated = times.ratedSeconds();
    String which =
        (request.ratedSeconds() == null ? "an assumed " : "the declared ") + Words.of(rated, "s");
    String bias =
        " What is missed is not counted, so that a series would show the longer transfers alone;"
            + " the forced record misses none.";
    if (rated >= zone.sureFromSeconds()) {
      return "A gap of " + which + " always trips it; a quicker unit's may be missed." + bias;
    }
    return text(
            "Beware: a gap of %s can be missed, at %s %% of the points on wave, and a shorter one at"
                + " more of them.",
            which, percent(zone.missedPart(rated)))
        + bias;
  }

  private String armedForTheUnit() {
    return text(
        "The unit may check the mains for %s before it goes back, and the instrument stays armed"
            + " for so long; a forced record would have to last through it.",
        Words.of(times.unitWaitSeconds(), "s"));
  }

  private static String quietness(PlannedTrigger trigger) {
    String level = Words.volts(trigger.levelVolts());
    return switch (trigger.method()) {
      case TIME_OUT_TRIGGER -> "no crossing of " + level;
      case DROPOUT_TRIGGER, INTERVAL_TRIGGER -> "no rise through " + level;
      case PULSE_WIDTH_TRIGGER -> "below " + level;
      case WINDOW_TRIGGER -> "within ±" + level;
      case EDGE_TRIGGER, EXTERNAL_TRIGGER, FORCED_RECORD, BACK_TO_BACK_RECORDS ->
          throw new IllegalArgumentException(trigger.method().words());
    };
  }

  private static String percent(double part) {
    return Words.plain(100 * part, 2);
  }

  private static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}

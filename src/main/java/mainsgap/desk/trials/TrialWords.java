package mainsgap.desk.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import mainsgap.bench.TrialReport;
import mainsgap.desk.pictures.MillisWords;
import mainsgap.desk.pictures.TrialMark;
import mainsgap.statistics.StatedValue;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.jspecify.annotations.Nullable;

/** The figures of a trial as words, rounded by their uncertainty. */
final class TrialWords {
  static final String NONE = "–";

  private TrialWords() {}

  /** The transfer time with its uncertainty, or what stands in its place. */
  static String transfer(Outcome outcome) {
    return switch (outcome.kind()) {
      case MEASURED -> {
        Measured measured = (Measured) outcome;
        yield stated(measured.transferMillis(), measured.uncertaintyMillis());
      }
      case NO_RETURN -> {
        NoReturn none = (NoReturn) outcome;
        yield "no return in " + stated(none.atLeastMillis(), none.uncertaintyMillis());
      }
      case NO_INTERRUPTION ->
          "no gap over " + millis(((NoInterruption) outcome).shortestVisibleMillis());
      case REFUSED -> "refused";
    };
  }

  /** Whole degrees; what rounds to a full circle is 0. */
  static String angle(Outcome outcome) {
    OptionalDouble degrees = MillisWords.angleDegrees(outcome);
    return degrees.isEmpty() ? NONE : Math.round(degrees.getAsDouble()) % 360 + "°";
  }

  /** Why it is no plain pass, then what was added. */
  static String note(TrialReport trial) {
    List<String> parts = new ArrayList<>();
    if (trial.setAsideReason() != null) {
      parts.add("set aside: " + trial.setAsideReason());
    }
    parts.addAll(trial.notes());
    String reason = reason(trial);
    if (!reason.isEmpty()) {
      parts.add(reason);
    }
    return String.join("; ", parts);
  }

  /** Why a trial is no plain pass; empty where it is one. */
  static String reason(TrialReport trial) {
    if (trial.outcome() instanceof Refused refused) {
      return refused.reason();
    }
    return trial.judgement() == null || TrialMark.asMeasured(trial) == TrialMark.PASSED
        ? ""
        : trial.judgement().reason();
  }

  /** A figure without an uncertainty of its own, to four digits. */
  static String millis(@Nullable Double value) {
    return value == null ? NONE : MillisWords.millis(value);
  }

  /** The value and its uncertainty to the same digit. */
  static String stated(double millis, double uncertaintyMillis) {
    return uncertaintyMillis > 0 && Double.isFinite(uncertaintyMillis)
        ? StatedValue.of(millis, uncertaintyMillis) + " ms"
        : millis(millis);
  }

  /** A sentence as it begins a line. */
  static String capital(String sentence) {
    return sentence.isEmpty()
        ? sentence
        : sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }

  /** A phrase as a sentence of its own. */
  static String sentence(String phrase) {
    return phrase.isEmpty() || ".?!".indexOf(phrase.charAt(phrase.length() - 1)) >= 0
        ? capital(phrase)
        : capital(phrase) + ".";
  }

  /** A seal in groups of four, eight groups a line: what a camera and a pencil can follow. */
  static String sealInGroups(String seal) {
    return seal.replaceAll("(.{4})(?=.)", "$1 ").replaceAll("((?:\\S{4} ){7}\\S{4}) ", "$1\n");
  }
}
